import { issue } from "@/lib/base";
import { CHAIN_START, entryHash, type LogEntry, type TextSha256 } from "./entry";
import type { ChainIssue } from "./issue";

/** The last entry of a walked part of the log. */
export type ChainEnd = Pick<LogEntry, "seq" | "hash" | "at">;

export interface ChainWalk {
  /** What is found in the entries that follow those walked so far, in order of `seq`. */
  next(entries: readonly LogEntry[]): readonly ChainIssue[];
}

/**
 * Walks the log part by part, so that no more than a part of it need be in memory. `after`: the entry behind which the walk
 * begins; null: at the first entry.
 * - `entry-missing`: numbers were skipped
 * - `entry-changed`: the entry's hash is not that of its content
 * - `entry-does-not-follow`: it names another hash than that of the entry before
 * - `time-runs-back`: dated before the entry before (a warning: a clock may have been put back)
 * A log cut off at its end is a sound log; what it no longer tells shows where the records are compared with it.
 */
export function chainWalk(sha256: TextSha256, after: ChainEnd | null = null): ChainWalk {
  let { seq, hash: previous, at } = after ?? { seq: 0, hash: CHAIN_START, at: "" };
  return {
    next(entries) {
      const found: ChainIssue[] = [];
      for (const entry of entries) {
        const where = { seq: entry.seq, subject: entry.subject };
        if (entry.seq !== seq + 1) found.push(issue("entry-missing", [seq + 1], { ...where, seq: seq + 1 }));
        if (entryHash(entry, sha256) !== entry.hash) found.push(issue("entry-changed", [entry.seq], where));
        if (entry.previous !== previous) found.push(issue("entry-does-not-follow", [entry.seq], where));
        if (entry.at < at) found.push(issue("time-runs-back", [entry.seq], where));
        ({ seq, at } = entry);
        previous = entry.hash;
      }
      return found;
    },
  };
}
