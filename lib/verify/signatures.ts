import { issue } from "@/lib/base";
import type { Db } from "@/lib/db";
import { installationKeyId, keysById, nodeKeys, readSignatures, standings, type FrozenRow } from "@/lib/keys";
import type { ContentIssue, LogEntry } from "@/lib/ledger";
import { checkSignature, faultWords, type KeySignature } from "@/lib/signature";
import { frozenSlices } from "./frozen";
import type { Looked } from "./photos";
import { step, type Watch } from "./watch";

/**
 * Every frozen text against the signature over it and against the one digest it ever had; every signature over the log
 * against the log as it is. `folder`: the data folder with the installation's key. `last`: number of the newest entry.
 * `only`: of these subjects alone, and then nothing is said of signatures over what is not there.
 */
export async function checkSignatures(
  db: Db,
  folder: string,
  { last, only }: { readonly last: number; readonly only: ReadonlySet<string> | null },
  watch: Watch = {},
): Promise<Looked> {
  const findings: ContentIssue[] = [];
  const there = new Set<string>();
  for await (const rows of frozenSlices(db, only)) {
    for (const { subject, digest } of rows) {
      there.add(subject);
      findings.push(...otherDigests(subject, digest, await entriesOf(db, subject)));
    }
    findings.push(...(await unfounded(db, rows)));
    await step(watch, "signatures", there.size);
  }
  const signatures = (await readSignatures(db)).filter(
    ({ subject }) => only === null || only.has(subject) || only.has(subject.replace(/^log:/, "checkpoint:")),
  );
  for (const { subject, read } of signatures) findings.push(...(await againstLog(db, subject, read, last)));
  findings.push(...(await badCheckpoints(db, signatures)));
  if (only === null) findings.push(...strays(signatures, there));
  findings.push(...(await foreignInstallation(db, folder)));
  return { looked: signatures.length, findings };
}

/** What the log says of a subject, oldest first. */
const entriesOf = (db: Db, subject: string): Promise<LogEntry[]> =>
  db.logEntry.findMany({ where: { subject }, orderBy: { seq: "asc" } });

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
  subject: string,
  signature: KeySignature | null,
  last: number,
): Promise<readonly ContentIssue[]> {
  if (signature === null) return [];
  const isLog = subject.startsWith("log:");
  const spoken = isLog
    ? { seq: Number(subject.slice("log:".length)), hash: signature.digest }
    : signature.head;
  // What came with an archive speaks of the log it came from.
  if (spoken === null || (await firstAction(db, subject)) === "record.imported") return [];
  const { seq, hash } = spoken;
  const entry = await db.logEntry.findFirst({ where: { seq }, select: { hash: true } });
  if (entry?.hash === hash) return [];
  return [issue(seq > last ? "log-cut" : "log-differs", [subject], { subject, seq, last })];
}

async function firstAction(db: Db, subject: string): Promise<string | null> {
  const first = await db.logEntry.findFirst({ where: { subject }, orderBy: { seq: "asc" } });
  return first?.action ?? null;
}

type Stored = Awaited<ReturnType<typeof readSignatures>>[number];

/** Signatures over the log that are not by a key of this installation, or do not fit. */
async function badCheckpoints(db: Db, signatures: readonly Stored[]): Promise<readonly ContentIssue[]> {
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
function strays(signatures: readonly Stored[], there: ReadonlySet<string>): readonly ContentIssue[] {
  return signatures.flatMap(({ subject }) =>
    there.has(subject) || subject.startsWith("log:")
      ? []
      : [issue("row-dangling" as const, [subject], { table: "KeySignature", of: subject })],
  );
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
