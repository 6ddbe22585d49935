import type { Db, Tx } from "@/lib/db";
import { checkSignature, standingOf, type Standing } from "@/lib/signature";
import { nodeKeys } from "./node-port";
import { keysById, signaturesOver } from "./read-keys";

/** A frozen text as its row says it. */
export interface FrozenRow {
  /** "signed:ID", "feedback:ID" */
  readonly subject: string;
  readonly digest: string;
  /** The key that the text itself names; null: none. */
  readonly keyId: string | null;
  /** Whom the text names as its signer; null: the installation signs. */
  readonly signerId: string | null;
  /** Whether the text has its digest, and the row beside it says what the text says. */
  readonly sound: "sound" | "row-differs" | "text-changed";
}

/** How far each of these can be relied on, by subject. Asked anew each time: keys are confirmed, and files are changed. */
export async function standings(
  db: Db | Tx,
  rows: readonly FrozenRow[],
): Promise<ReadonlyMap<string, Standing>> {
  const subjects = rows.map(({ subject }) => subject);
  const signatures = await signaturesOver(db, subjects);
  const keys = await keysById(
    db,
    [...signatures.values()].map(({ keyId }) => keyId),
  );
  const [firsts, firstKey] = [await firstEntries(db, subjects), await firstKeyEntry(db)];
  const found = rows.map((row) => {
    const { subject, digest, keyId, signerId, sound } = row;
    const claimed = { subject, digest, keyId };
    const signature = signatures.get(subject) ?? null;
    const first = firsts.get(subject);
    const standing = standingOf({
      claimed,
      verdict: checkSignature(claimed, signature, keys, nodeKeys),
      known: keys.get(signature?.keyId ?? "") ?? null,
      signerId,
      frozenBeforeKeys:
        first !== undefined && frozenHere.has(first.action) && (firstKey === null || first.seq < firstKey),
      imported: first?.action === "record.imported",
      sound,
    });
    return [subject, standing] as const;
  });
  return new Map(found);
}

/** Entries that say that a text was frozen here, or was here when the log was begun. */
const frozenHere: ReadonlySet<string> = new Set(["record.signed", "feedback.returned", "entered"]);

interface Entry {
  readonly seq: number;
  readonly action: string;
}

/** The entry by which each subject was frozen or came in. */
async function firstEntries(db: Db | Tx, subjects: readonly string[]): Promise<ReadonlyMap<string, Entry>> {
  const rows = await db.logEntry.findMany({
    where: { subject: { in: [...subjects] }, action: { in: [...frozenHere, "record.imported"] } },
    orderBy: { seq: "desc" },
    select: { subject: true, seq: true, action: true },
  });
  return new Map(rows.map(({ subject, ...entry }) => [subject, entry]));
}

/** Number of the entry by which this installation began to keep keys. */
async function firstKeyEntry(db: Db | Tx): Promise<number | null> {
  const row = await db.logEntry.findFirst({
    where: { action: "key.begun" },
    orderBy: { seq: "asc" },
    select: { seq: true },
  });
  return row?.seq ?? null;
}
