import { createHash } from "node:crypto";
import { canonicalJson } from "@/lib/base";
import type { Tx } from "@/lib/db";
import { nextEntry, type LogEntry } from "@/lib/ledger";
import { subjectState } from "./subjects";

/** What an entry says beside who, what and when: ids, numbers, codes. Never a person's name or free text. */
export type LogWords = Readonly<Record<string, string | number | boolean | null | readonly string[]>>;

export interface LogLine {
  readonly by: string;
  readonly subject: string;
  readonly action: string;
  readonly detail?: LogWords | undefined;
}

export const sha256Text = (text: string): string => createHash("sha256").update(text).digest("hex");

/** SHA-256 of a subject's state as it is now; null when it is gone. */
export async function stateDigest(tx: Tx, subject: string): Promise<string | null> {
  const state = await subjectState(tx, subject);
  return state === null ? null : sha256Text(canonicalJson(state));
}

/** Appends entries one after the other within the caller's transaction; each seals its subject as it is now. */
export async function writeLogs(tx: Tx, lines: readonly LogLine[]): Promise<void> {
  let last = await lastEntry(tx);
  // Asked for at once the database reads them together.
  const digests = await Promise.all(lines.map(({ subject }) => stateDigest(tx, subject)));
  const entries = lines.map((line, i): LogEntry => (last = entryAfter(last, line, digests[i] ?? null)));
  await tx.logEntry.createMany({ data: entries });
}

const lastEntry = (tx: Tx) =>
  tx.logEntry.findFirst({ orderBy: { seq: "desc" }, select: { seq: true, hash: true, at: true } });

/** A clock that was set by so much is worth a word in the log; less is a network's ordinary correction. */
const CLOCK_MS = 60_000;

/** How far this machine's clock stands behind the log's newest entry, in ms; 0: it does not. */
export async function clockBehindMs(tx: Tx, now: Date): Promise<number> {
  const last = await lastEntry(tx);
  const behind = last ? Date.parse(last.at) - now.getTime() : 0;
  return behind > CLOCK_MS ? behind : 0;
}

/** No entry is dated before the one it follows. Where the clock was put back, it says what the clock said. */
function timeAfter(last: { readonly at: string } | null, now: Date): { at: string; clock: LogWords } {
  const at = now.toISOString();
  if (last === null || at >= last.at) return { at, clock: {} };
  const isFar = Date.parse(last.at) - now.getTime() > CLOCK_MS;
  return { at: last.at, clock: isFar ? { clockSaid: at } : {} };
}

function entryAfter(last: Awaited<ReturnType<typeof lastEntry>>, line: LogLine, digest: string | null) {
  const { at, clock } = timeAfter(last, new Date());
  const draft = {
    at,
    by: line.by,
    action: line.action,
    subject: line.subject,
    digest,
    detail: canonicalJson({ ...line.detail, ...clock }),
  };
  return nextEntry(last, draft, sha256Text);
}

/** Appends one entry within the caller's transaction. Two writers cannot both get a number: it is the key. */
export async function writeLog(tx: Tx, line: LogLine): Promise<void> {
  const digest = await stateDigest(tx, line.subject);
  await tx.logEntry.create({ data: entryAfter(await lastEntry(tx), line, digest) });
}
