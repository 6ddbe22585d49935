import { canonicalJson, issue } from "@/lib/base";
import { sealedViews } from "@/lib/beads";
import type { Db } from "@/lib/db";
import { photosNamed } from "@/lib/inspect";
import { compareStates, verifyChain, type ContentIssue, type LedgerIssue, type LogEntry } from "@/lib/ledger";
import { verifyOriginal, viewDigests, type PhotoSize } from "@/lib/photo";
import type { LogHead } from "@/lib/signature";
import { sha256Text, allEntries, allSubjects, subjectState } from "@/lib/store";
import { checkDerived } from "./derived";
import { checkSignatures } from "./signatures";

export interface Verification {
  readonly entries: number;
  readonly subjects: number;
  readonly photos: number;
  readonly frozen: number;
  /** Signatures by key, over frozen texts and over the log. */
  readonly signatures: number;
  /** Beads whose derived rows were worked out again. */
  readonly derived: number;
  /** Hash of the newest entry; write it down outside this machine, and a log cut off later shows. */
  readonly head: string | null;
  readonly findings: readonly LedgerIssue[];
  /** What is worth a word and takes nothing from the records: a log of an earlier version may run back in time. */
  readonly remarks: readonly LedgerIssue[];
}

/**
 * Walks the log from its first entry, compares everything there is with what the log last said of it, hashes every
 * original photo and the pictures made from it again, and every frozen text; what follows from the records is worked out
 * again. Reads only. `folder`: the data folder with the photos. `noted`: a head of the log that was kept elsewhere; where it
 * still stands, nothing before it was changed.
 */
export async function verifyRecords(
  db: Db,
  folder: string,
  noted: LogHead | null = null,
): Promise<Verification> {
  const entries = await allEntries(db);
  const states = new Map<string, string>();
  for (const subject of await allSubjects(db)) {
    const digest = await presentDigest(db, subject);
    if (digest !== null) states.set(subject, digest);
  }
  const chain = verifyChain(entries, sha256Text);
  const photos = await checkPhotos(db, folder, sealedViews(entries));
  const frozen = await checkFrozen(db);
  const signatures = await checkSignatures(db, folder, entries);
  const derived = await checkDerived(db);
  return {
    entries: entries.length,
    subjects: states.size,
    photos: photos.looked,
    frozen: frozen.looked,
    signatures: signatures.looked,
    derived: derived.looked,
    head: entries.at(-1)?.hash ?? null,
    remarks: chain.filter(({ code }) => code === "time-runs-back"),
    findings: [
      ...chain.filter(({ code }) => code !== "time-runs-back"),
      ...(noted ? againstNoted(entries, noted) : []),
      ...compareStates(entries, states),
      ...photos.findings,
      ...frozen.findings,
      ...signatures.findings,
      ...(await danglingRows(db)),
      ...derived.findings,
    ],
  };
}

function againstNoted(entries: readonly LogEntry[], { seq, hash }: LogHead): readonly ContentIssue[] {
  if (entries.find((entry) => entry.seq === seq)?.hash === hash) return [];
  const last = entries.at(-1)?.seq ?? 0;
  return [issue(seq > last ? "noted-cut" : "noted-differs", [seq], { seq, last })];
}

/** A row that cannot even be read any more (JSON cut short, a date that is none) was changed: no digest fits it. */
async function presentDigest(db: Db, subject: string): Promise<string | null> {
  try {
    const state = await subjectState(db, subject);
    return state === null ? null : sha256Text(canonicalJson(state));
  } catch {
    return "unreadable";
  }
}

/** Rows whose key points nowhere. The program cannot write one, and no subject's state would hold it. */
async function danglingRows(db: Db): Promise<readonly ContentIssue[]> {
  const rows = await db.$queryRawUnsafe<{ table: string; parent: string }[]>("PRAGMA foreign_key_check");
  return rows.map(({ table, parent }) => issue("row-dangling" as const, [table], { table, of: parent }));
}

interface Looked {
  readonly looked: number;
  readonly findings: readonly ContentIssue[];
}

async function checkPhotos(db: Db, folder: string, sealed: ReadonlyMap<string, string>): Promise<Looked> {
  const beadsOf = new Map<string, string[]>();
  const on = (sha256: string, what: string) => beadsOf.set(sha256, [...(beadsOf.get(sha256) ?? []), what]);
  const beads = await db.bead.findMany({ select: { id: true, number: true } });
  const numbers = new Map(beads.map(({ id, number }) => [id, number]));
  // Not through the relation: a row that was pointed nowhere must be found, and must not stop the search.
  for (const { sha256, beadId } of await db.photo.findMany({ select: { sha256: true, beadId: true } }))
    on(sha256, `bead ${numbers.get(beadId) ?? "unknown"}`);
  // Of a deleted bead that can still be brought back, the photos are kept as well.
  for (const { number, content } of await db.deletedBead.findMany())
    for (const sha256 of photosNamed(content ?? "")) on(sha256, `deleted bead ${number}`);
  // A photo taken off its bead after signing is still what the signature speaks of.
  for (const { id, content } of await db.signedRevision.findMany({ select: { id: true, content: true } }))
    for (const sha256 of photosNamed(content)) if (!beadsOf.has(sha256)) on(sha256, `signed ${id}`);
  const findings: ContentIssue[] = [];
  for (const [sha256, places] of beadsOf) {
    const where = { sha256, beads: places.join(", ") };
    for (const size of await changedViews(folder, sha256, sealed))
      findings.push(issue("view-changed", [sha256, size], { ...where, size }));
    const checked = await verifyOriginal(folder, sha256);
    if (checked.ok) continue;
    const code = checked.issues[0]?.code === "photo-missing" ? "photo-missing" : "photo-changed";
    findings.push(issue(code, [sha256], where));
  }
  return { looked: beadsOf.size, findings };
}

/** The derived pictures that are not what the log sealed. */
async function changedViews(
  folder: string,
  sha256: string,
  sealed: ReadonlyMap<string, string>,
): Promise<readonly PhotoSize[]> {
  const digests = Object.entries(await viewDigests(folder, sha256)) as [PhotoSize, string | null][];
  return digests.flatMap(([size, digest]) => {
    const said = sealed.get(`${sha256}/${size}`);
    return said === undefined || said === digest ? [] : [size];
  });
}

/** Whether each text that was frozen still has its digest. */
export async function checkFrozen(db: Db): Promise<Looked> {
  const signed = await db.signedRevision.findMany({ select: { id: true, content: true, digest: true } });
  const returned = await db.feedback.findMany({
    where: { returned: { not: null } },
    select: { handInId: true, returned: true, digest: true },
  });
  const texts = [
    ...signed.map(({ id, content, digest }) => ({ subject: `signed:${id}`, text: content, digest })),
    ...returned.map((row) => ({
      subject: `feedback:${row.handInId}`,
      text: row.returned ?? "",
      digest: row.digest,
    })),
  ];
  const findings = texts
    .filter(({ text, digest }) => sha256Text(text) !== digest)
    .map(({ subject }) => issue("text-changed" as const, [subject], { subject }));
  return { looked: texts.length, findings };
}
