import { issue } from "@/lib/base";
import type { Db } from "@/lib/db";
import {
  countSignatures,
  installationKeyId,
  keysById,
  nodeKeys,
  signatureSlices,
  standings,
  type FrozenRow,
  type StoredSignature,
} from "@/lib/keys";
import type { ContentIssue, LogEntry } from "@/lib/ledger";
import { checkSignature, faultWords, type KeySignature } from "@/lib/signature";
import { countFrozen, frozenAmong, frozenSlices } from "./frozen";
import { counter, type Walk } from "./walk";

/**
 * Every frozen text against its own digest, against the signature over it and against the one digest it ever had. `only`: of
 * these subjects alone. Answers with how many there are.
 */
export async function* checkFrozen(db: Db, only: ReadonlySet<string> | null): Walk<number> {
  const count = counter("frozen texts", await countFrozen(db, only));
  for await (const rows of frozenSlices(db, only)) {
    const findings: ContentIssue[] = rows
      .filter(({ sound }) => sound === "text-changed")
      .map(({ subject }) => issue("text-changed" as const, [subject], { subject }));
    const own = await entriesOf(
      db,
      rows.map(({ subject }) => subject),
    );
    for (const { subject, digest } of rows)
      findings.push(...otherDigests(subject, digest, own.get(subject) ?? []));
    yield count.step(rows.length, [...findings, ...(await unfounded(db, rows))]);
  }
  yield count.end();
  return count.looked();
}

/**
 * Every signature against the log as it is, and those over the log against the keys. `last`: number of the newest entry.
 * `only`: over these subjects alone, and then nothing is said of signatures over what is not there. Answers with how many.
 */
export async function* checkSignatures(
  db: Db,
  { last, only }: { readonly last: number; readonly only: ReadonlySet<string> | null },
): Walk<number> {
  const count = counter("signatures", only === null ? await countSignatures(db) : 0);
  for await (const slice of signatureSlices(db, SLICE)) {
    const signatures = slice.filter(
      ({ subject }) =>
        only === null || only.has(subject) || only.has(subject.replace(/^log:/, "checkpoint:")),
    );
    yield count.step(signatures.length, [
      ...(await againstLog(db, signatures, last)),
      ...(await badCheckpoints(db, signatures)),
      ...(only === null ? await strays(db, signatures) : []),
    ]);
  }
  yield count.end();
  return count.looked();
}

/** The keys of this installation. `folder`: the data folder with the one it signs with. */
export async function* checkKeys(db: Db, folder: string): Walk<void> {
  const count = counter("keys", 1);
  yield count.step(1, await foreignInstallation(db, folder));
}

/** Signatures read at once. */
const SLICE = 100;

/** What the log says of each subject, oldest first. */
async function entriesOf(
  db: Db,
  subjects: readonly string[],
): Promise<ReadonlyMap<string, readonly LogEntry[]>> {
  const own = new Map<string, LogEntry[]>();
  const rows = await db.logEntry.findMany({
    where: { subject: { in: [...subjects] } },
    orderBy: { seq: "asc" },
  });
  for (const row of rows) own.set(row.subject, [...(own.get(row.subject) ?? []), row]);
  return own;
}

const freezes: ReadonlySet<string> = new Set(["record.signed", "record.imported", "feedback.returned"]);

/** What is frozen has one digest for ever: each entry that freezes it says the digest it has, and nothing moves it since. */
function otherDigests(subject: string, digest: string, own: readonly LogEntry[]): readonly ContentIssue[] {
  const frozen = own.filter(({ action }) => freezes.has(action));
  const said = frozen.map((entry) => saidDigest(entry));
  // A reply is written beside returned feedback, so only of a signed record is the whole state one for ever.
  const states = new Set(own.map((entry) => entry.digest));
  const moved = subject.startsWith("signed:") && states.size > 1;
  const twice = frozen.length > 1 || said.some((one) => one !== null && one !== digest) || moved;
  return twice ? [issue("digest-twice", [subject], { subject })] : [];
}

function saidDigest({ detail }: LogEntry): string | null {
  try {
    const { digest } = JSON.parse(detail) as { digest?: unknown };
    return typeof digest === "string" ? digest : null;
  } catch {
    return null;
  }
}

/** Frozen here, and no signature fits. What was imported unverified says so wherever it is shown; it is no finding. */
async function unfounded(db: Db, frozen: readonly FrozenRow[]): Promise<readonly ContentIssue[]> {
  const stand = await standings(db, frozen);
  return frozen.flatMap(({ subject }) => {
    const standing = stand.get(subject);
    if (standing?.kind !== "unverified" || standing.imported) return [];
    return [issue("signature-bad" as const, [subject], { subject, why: faultWords[standing.why] })];
  });
}

/** The entry of the log that a signature speaks of must be there, and be the one it was. */
async function againstLog(
  db: Db,
  signatures: readonly StoredSignature[],
  last: number,
): Promise<readonly ContentIssue[]> {
  const own = await entriesOf(
    db,
    signatures.map(({ subject }) => subject),
  );
  const spoken = signatures.flatMap(({ subject, read }) => {
    // What came with an archive speaks of the log it came from.
    const isForeign = own.get(subject)?.[0]?.action === "record.imported";
    const head = read === null || isForeign ? null : headSpokenOf(subject, read);
    return head === null ? [] : [{ subject, ...head }];
  });
  const there = await hashesOf(
    db,
    spoken.map(({ seq }) => seq),
  );
  return spoken.flatMap(({ subject, seq, hash }) =>
    there.get(seq) === hash
      ? []
      : [
          issue(seq > last ? ("log-cut" as const) : ("log-differs" as const), [subject], {
            subject,
            seq,
            last,
          }),
        ],
  );
}

const headSpokenOf = (subject: string, { digest, head }: KeySignature) =>
  subject.startsWith("log:") ? { seq: Number(subject.slice("log:".length)), hash: digest } : head;

/** Hashes of entries by their numbers; what is no number of an entry is of none. */
async function hashesOf(db: Db, seqs: readonly number[]): Promise<ReadonlyMap<number, string>> {
  const known = [...new Set(seqs)].filter((seq) => Number.isSafeInteger(seq) && seq > 0 && seq < 2 ** 31);
  const rows = await db.logEntry.findMany({
    where: { seq: { in: known } },
    select: { seq: true, hash: true },
  });
  return new Map(rows.map(({ seq, hash }) => [seq, hash]));
}

/** Signatures over the log that are not by a key of this installation, or do not fit. */
async function badCheckpoints(
  db: Db,
  signatures: readonly StoredSignature[],
): Promise<readonly ContentIssue[]> {
  const over = signatures.filter(({ subject }) => subject.startsWith("log:"));
  const keys = await keysById(
    db,
    over.flatMap(({ read }) => (read ? [read.keyId] : [])),
  );
  return over.flatMap(({ subject, read }) => {
    const claimed = { subject, digest: read?.digest ?? "", keyId: null };
    const verdict = checkSignature(claimed, read, keys, nodeKeys);
    const key = keys.get(read?.keyId ?? "");
    const ours = key?.origin === "here" && key.holder === "installation";
    if (verdict.fits && ours) return [];
    const why = faultWords[verdict.fits ? "other-key" : verdict.why];
    return [issue("signature-bad" as const, [subject], { subject, why })];
  });
}

/** Signatures over something that is not there. */
async function strays(db: Db, signatures: readonly StoredSignature[]): Promise<readonly ContentIssue[]> {
  const over = signatures.map(({ subject }) => subject).filter((subject) => !subject.startsWith("log:"));
  const there = await frozenAmong(db, over);
  return over
    .filter((subject) => !there.has(subject))
    .map((subject) => issue("row-dangling" as const, [subject], { table: "KeySignature", of: subject }));
}

/**
 * A key that is said to be this installation's, and whose private part is not the one in the data folder; or one that
 * lies there, and nothing is known of it: then everything that says that keys were kept was taken out.
 */
async function foreignInstallation(db: Db, folder: string): Promise<readonly ContentIssue[]> {
  const rows = await db.signingKey.findMany({
    where: { origin: "here", holder: "installation", events: { none: { what: "ended" } } },
    select: { id: true },
  });
  const own = installationKeyId(folder);
  const known = own === null || (await db.signingKey.count({ where: { id: own, origin: "here" } })) > 0;
  return [
    ...rows
      .filter(({ id }) => id !== own)
      .map(({ id }) => issue("key-not-ours" as const, [id], { subject: `key:${id}` })),
    ...(known ? [] : [issue("key-forgotten" as const, [own], { subject: `key:${own}` })]),
  ];
}
