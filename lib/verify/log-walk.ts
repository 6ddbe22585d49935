import { issue } from "@/lib/base";
import { viewSealsIn } from "@/lib/beads";
import type { Db } from "@/lib/db";
import { chainWalk, type ChainEnd, type LedgerIssue, type LogEntry } from "@/lib/ledger";
import type { LogHead } from "@/lib/signature";
import { logParts, sha256Text } from "@/lib/store";
import { counter, type Walk } from "./walk";

/** What the log's own walk tells. */
export interface WalkedLog {
  readonly entries: number;
  /** The newest entry; null: the log is empty. */
  readonly end: ChainEnd | null;
  /** Numbers of the entries that seal the pictures of a photo, by the original's SHA-256. */
  readonly seals: ReadonlyMap<string, readonly number[]>;
  /** What the walked entries speak of; null: it began at the first, so of everything. */
  readonly touched: ReadonlySet<string> | null;
}

/**
 * Walks the log part by part. `since`: only what follows this entry, which must still be what it was. `noted`: a head kept
 * elsewhere; where it stands, nothing before it was changed.
 */
export async function* walkLog(
  db: Db,
  { since, noted }: { readonly since: ChainEnd | null; readonly noted: LogHead | null },
): Walk<WalkedLog> {
  const walk = chainWalk(sha256Text, since);
  const seals = new Map<string, number[]>();
  const touched = since === null ? null : new Set<string>();
  const count = counter("log", Math.max(0, (await newestSeq(db)) - (since?.seq ?? 0)));
  let [entries, end]: [number, ChainEnd | null] = [since?.seq ?? 0, since];
  for await (const part of logParts(db, since?.seq ?? 0)) {
    for (const entry of part) {
      for (const { sha256 } of viewSealsIn(entry)) noteSeal(seals, sha256, entry);
      touched?.add(entry.subject);
    }
    entries += part.length;
    const last = part.at(-1);
    if (last) end = { seq: last.seq, hash: last.hash, at: last.at };
    yield count.step(part.length, walk.next(part));
  }
  const heads = [since, noted].filter((head) => head !== null);
  const findings: LedgerIssue[] = [];
  for (const head of heads) findings.push(...(await againstNoted(db, head)));
  yield count.end(findings);
  return { entries, end, seals, touched };
}

function noteSeal(seals: Map<string, number[]>, sha256: string, { seq }: LogEntry): void {
  const own = seals.get(sha256);
  if (!own) seals.set(sha256, [seq]);
  else if (own.at(-1) !== seq) own.push(seq);
}

async function againstNoted(db: Db, { seq, hash }: LogHead): Promise<readonly LedgerIssue[]> {
  const entry = await db.logEntry.findUnique({ where: { seq }, select: { hash: true } });
  if (entry?.hash === hash) return [];
  const last = await newestSeq(db);
  return [issue(seq > last ? "noted-cut" : "noted-differs", [seq], { seq, last })];
}

async function newestSeq(db: Db): Promise<number> {
  const newest = await db.logEntry.findFirst({ orderBy: { seq: "desc" }, select: { seq: true } });
  return newest?.seq ?? 0;
}
