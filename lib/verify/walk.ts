import { setImmediate as turn } from "node:timers/promises";
import type { LedgerIssue } from "@/lib/ledger";

/** What is looked at, in this order. */
export const walkParts = [
  "log",
  "records",
  "unlogged records",
  "photos",
  "frozen texts",
  "signatures",
  "keys",
  "rows",
  "lists and figures",
] as const;
export type Part = (typeof walkParts)[number];

/** How far a walk is, and what it found since it last said so. */
export interface WalkStep {
  readonly part: Part;
  /** Never fewer than before in the same part; at the part's end as many as `of`. */
  readonly looked: number;
  /** How many there are, as counted when the part began: others write meanwhile. */
  readonly of: number;
  readonly findings: readonly LedgerIssue[];
}

/** A walk goes from step to step as it is asked to. Only one that came to its end has an answer. */
export type Walk<T> = AsyncGenerator<WalkStep, T, void>;

/** Whoever waits for a walk may be told how far it is, and may stop it. */
export interface Watch {
  readonly onProgress?: (part: Part, looked: number, of: number) => void;
  readonly signal?: AbortSignal;
}

/** Counts what is looked at in one part. There may turn out to be more of it, or less, than was counted before. */
export function counter(part: Part, counted: number) {
  let looked = 0;
  return {
    looked: () => looked,
    step: (more: number, findings: readonly LedgerIssue[] = []): WalkStep => {
      looked += more;
      return { part, looked, of: Math.max(counted, looked), findings };
    },
    /** The last step. */
    end: (findings: readonly LedgerIssue[] = []): WalkStep => ({ part, looked, of: looked, findings }),
  };
}

/** Goes to the end. Between two steps others have their turn; throws the signal's reason once it is to stop. */
export async function wholeWalk<T>(walk: Walk<T>, { onProgress, signal }: Watch): Promise<T> {
  for (;;) {
    const { value, done } = await walk.next();
    if (done) return value;
    onProgress?.(value.part, value.looked, value.of);
    await turn();
    signal?.throwIfAborted();
  }
}

/** The same walk, with what it finds kept besides. */
export async function* gathered<T>(walk: Walk<T>, into: LedgerIssue[]): Walk<T> {
  for (;;) {
    const { value, done } = await walk.next();
    if (done) return value;
    into.push(...value.findings);
    yield value;
  }
}
