import type { Result } from "@/lib/base";
import { groupBy, type GroupKey, type Period } from "@/lib/trends/group";
import type { TrendIssue } from "@/lib/trends/issue";
import type { BeadObservation } from "@/lib/trends/observation";
import type { PChart } from "@/lib/trends/p-chart";
import { causeTallies, imperfectionTallies, pareto, type Pareto } from "@/lib/trends/pareto";
import { rejectChart } from "./reject-chart";
import { rejectRate, type RejectRate } from "./reject-rate";

/** Beads that share a welder, a wire class, a joint …, and how many of them were rejected. */
export interface TrendGroup {
  /** null: not recorded. */
  readonly key: string | null;
  readonly beads: number;
  readonly rejects: RejectRate;
  /** Found on most of its beads; null where nothing is marked. */
  readonly mostSeen: string | null;
}

export interface TrendReport {
  readonly beads: number;
  readonly rejects: RejectRate;
  readonly imperfections: Pareto;
  readonly causes: Pareto;
  readonly chart: Result<PChart, TrendIssue>;
  /** Largest first. */
  readonly groups: readonly TrendGroup[];
}

export interface TrendReportOptions<T extends BeadObservation> {
  readonly period: Period;
  readonly by: GroupKey | ((one: T) => string | null);
  /** Rows of a Pareto before the rest is gathered. */
  readonly most: number;
}

/** Everything the trends of a list of beads consist of; each number keeps the ids of the beads it is made of. */
export function trendReport<T extends BeadObservation>(
  observations: readonly T[],
  { period, by, most }: TrendReportOptions<T>,
): TrendReport {
  const groups = groupBy(observations, by).map(({ key, observations: members }): TrendGroup => ({
    key,
    beads: members.length,
    rejects: rejectRate(members),
    mostSeen: pareto(imperfectionTallies(members)).rows[0]?.key ?? null,
  }));
  return {
    beads: observations.length,
    rejects: rejectRate(observations),
    imperfections: pareto(imperfectionTallies(observations), { most }),
    causes: pareto(causeTallies(observations), { most }),
    chart: rejectChart(observations, period),
    groups: [...groups].sort((a, b) => b.beads - a.beads),
  };
}
