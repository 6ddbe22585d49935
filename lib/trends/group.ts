import { fail, issue, ok, type Result } from "@/lib/base";
import { calendarMonth, isoWeek } from "./calendar";
import type { TrendIssue } from "./issue";
import type { BeadObservation } from "./observation";

/** What beads can be sorted by as they stand; anything else goes through `groupBy` with a function. */
export const groupKeys = [
  "welder",
  "process",
  "electrodeClass",
  "joint",
  "position",
  "verdict",
  "confirmedCause",
] as const;
export type GroupKey = (typeof groupKeys)[number];

export const periods = ["week", "month"] as const;
export type Period = (typeof periods)[number];

/** Beads that share a key; null is the group of those where it is not known. Each keeps its observations, so each leads to its beads. */
export interface Group<T extends BeadObservation = BeadObservation> {
  readonly key: string | null;
  readonly beadIds: readonly string[];
  readonly observations: readonly T[];
}

/** Groups in order of first appearance, observations in their own order. */
export function groupBy<T extends BeadObservation>(
  observations: readonly T[],
  keyOf: GroupKey | ((one: T) => string | null),
): readonly Group<T>[] {
  const read = typeof keyOf === "function" ? keyOf : (one: T): string | null => one[keyOf];
  const groups = new Map<string | null, T[]>();
  for (const one of observations) {
    const key = read(one);
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups].map(([key, members]) => ({
    key,
    beadIds: [...new Set(members.map(({ beadId }) => beadId))],
    observations: members,
  }));
}

/** By ISO week ("2026-W48") or calendar month ("2026-11"), oldest first. Periods without a bead do not appear. @twice */
export function groupByPeriod<T extends BeadObservation>(
  observations: readonly T[],
  period: Period,
): Result<readonly Group<T>[], TrendIssue> {
  const keyOf = period === "week" ? isoWeek : calendarMonth;
  const wrong = observations.flatMap(({ day, beadId }, i) =>
    keyOf(day) === null ? [issue("day-not-a-date" as const, [i, "day"], { day, beadId })] : [],
  );
  if (wrong.length > 0) return fail<TrendIssue>(...wrong);
  const groups = groupBy(observations, ({ day }) => keyOf(day));
  // Both forms are padded, so that the order of text is the order of time.
  return ok([...groups].sort((a, b) => ((a.key ?? "") < (b.key ?? "") ? -1 : 1)));
}
