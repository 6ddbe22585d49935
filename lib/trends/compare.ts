import { fail, issue, ok, type Result } from "@/lib/base";
import type { TrendIssue } from "./issue";
import type { BeadObservation } from "./observation";
import { rejectRate } from "./reject-rate";
import { shareOf, type Share } from "./share";

/** How a share changed, with the interval of the change. */
export interface ShareDifference {
  readonly before: Share;
  readonly after: Share;
  /** after - before, -1 to 1: negative is fewer. */
  readonly difference: number;
  /** Two-sided 95 % interval of the difference. It holds 0: the change may be chance. */
  readonly low: number;
  readonly high: number;
  readonly method: "newcombe-score";
}

/**
 * Difference of two independent shares, each of at least one. The interval is built from the two Wilson intervals:
 * method 10 of Newcombe 1998, Statistics in Medicine 17, 873-890, without continuity correction.
 */
export function shareDifference(
  before: { readonly count: number; readonly of: number },
  after: { readonly count: number; readonly of: number },
): Result<ShareDifference, TrendIssue> {
  const b = shareOf(before.count, before.of);
  const a = shareOf(after.count, after.of);
  if (b.value === null) return fail(issue("group-empty", [], { side: "before" }));
  if (a.value === null) return fail(issue("group-empty", [], { side: "after" }));
  const difference = a.value - b.value;
  return ok({
    before: b,
    after: a,
    difference,
    low: difference - Math.hypot(a.value - a.low, b.high - b.value),
    high: difference + Math.hypot(a.high - a.value, b.value - b.low),
    method: "newcombe-score",
  });
}

/** Reject rates of two groups that share no bead, e.g. before and after a change. */
export function compareRejects(
  before: readonly BeadObservation[],
  after: readonly BeadObservation[],
): Result<ShareDifference, TrendIssue> {
  const first = new Set(before.map(({ beadId }) => beadId));
  const both = after.find(({ beadId }) => first.has(beadId));
  if (both) return fail(issue("bead-on-both-sides", [], { beadId: both.beadId }));
  return shareDifference(rejectRate(before).rejected, rejectRate(after).rejected);
}
