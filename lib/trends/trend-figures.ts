import { fail, issue, ok, type Result } from "@/lib/base";
import { calendarMonth, isoWeek } from "./calendar";
import type { Period } from "./group";
import type { TrendIssue } from "./issue";
import { pChart, type PChart, type PChartPoint, type Sample } from "./p-chart";
import { shareOf, type Share } from "./share";

/** Something counted, and how often. */
export interface Counted {
  readonly key: string;
  readonly count: number;
}

/** Beads of one day that were judged one way or the other. */
export interface DayCount {
  /** ISO 8601 calendar date. */
  readonly day: string;
  readonly decided: number;
  readonly rejected: number;
}

export interface GroupCount {
  /** null: not recorded. */
  readonly key: string | null;
  readonly beads: number;
  readonly decided: number;
  readonly rejected: number;
  /** Found on most of its beads; null where nothing is marked. */
  readonly mostSeen: string | null;
  /** Every word that is counted here: several where one person stands on beads under several. */
  readonly keys: readonly string[];
  /** Of welders: whether the row is a person here, nobody here, or one word of several people; null: of no welders. */
  readonly standing: "person" | "nobody" | "several" | null;
  /**
   * Of welders, where another row has one of its words too: whose beads alone are meant. `id`: the person's; "unknown":
   * those linked to nobody. `typed`: words by which beads that are linked to nobody are theirs. null: its words say it.
   */
  readonly person: { readonly id: string; readonly typed: readonly string[] } | null;
}

/**
 * Beads as counts: what a database adds up and `trendFigures` draws. Lists are sorted largest first, equals in order of
 * first appearance in the list of beads.
 */
export interface TrendCounts {
  readonly beads: number;
  readonly decided: number;
  readonly rejected: number;
  /** Each imperfection once per bead. */
  readonly imperfections: readonly Counted[];
  readonly causes: readonly Counted[];
  readonly days: readonly DayCount[];
  readonly groups: readonly GroupCount[];
}

export interface FigureRow {
  /** null: the row that gathers the rest. */
  readonly key: string | null;
  /** What a gathered row is made of, largest first; one key otherwise. */
  readonly keys: readonly string[];
  readonly count: number;
  readonly share: Share;
  /** This row and all before it, of everything counted. */
  readonly cumulative: Share;
  /** Of all beads, how many have it: beads are independent, what is found on one bead is not. null: a gathered row. */
  readonly ofBeads: Share | null;
}

export interface FigurePareto {
  readonly total: number;
  readonly rows: readonly FigureRow[];
}

export type FigurePoint = Omit<PChartPoint, "beadIds">;
export type FigureChart = Omit<PChart, "points"> & { readonly points: readonly FigurePoint[] };

export interface FigureGroup {
  readonly key: string | null;
  readonly beads: number;
  readonly rejected: Share;
  readonly mostSeen: string | null;
  readonly keys: GroupCount["keys"];
  readonly standing: GroupCount["standing"];
  readonly person: GroupCount["person"];
}

export interface TrendFigures {
  readonly beads: number;
  readonly rejected: Share;
  /** Beads without a decided verdict: neither good nor bad, left out of the share. */
  readonly undecided: number;
  readonly imperfections: FigurePareto;
  readonly causes: FigurePareto;
  readonly chart: Result<FigureChart, TrendIssue>;
  /** Largest first. */
  readonly groups: readonly FigureGroup[];
}

/** The trends of counted beads. `most`: rows of a Pareto before the rest is gathered, if that is more than one row. */
export function trendFigures(
  counts: TrendCounts,
  { period, most }: { readonly period: Period; readonly most: number },
): TrendFigures {
  return {
    beads: counts.beads,
    rejected: shareOf(counts.rejected, counts.decided),
    undecided: counts.beads - counts.decided,
    imperfections: paretoOf(counts.imperfections, most, counts.beads),
    causes: paretoOf(counts.causes, most, counts.beads),
    chart: chartOf(counts.days, period),
    groups: counts.groups.map(({ decided, rejected, ...group }) => ({
      ...group,
      rejected: shareOf(rejected, decided),
    })),
  };
}

function paretoOf(counted: readonly Counted[], most: number, beads: number): FigurePareto {
  const total = counted.reduce((sum, { count }) => sum + count, 0);
  const gather = counted.length > most + 1;
  const heads = gather ? counted.slice(0, most) : counted;
  const rest = gather ? counted.slice(most) : [];
  const parts: { key: string | null; keys: string[]; count: number }[] = heads.map(({ key, count }) => ({
    key,
    keys: [key],
    count,
  }));
  if (gather) {
    const count = rest.reduce((sum, one) => sum + one.count, 0);
    parts.push({ key: null, keys: rest.map(({ key }) => key), count });
  }
  let before = 0;
  const rows = parts.map((part) => {
    before += part.count;
    return {
      ...part,
      share: shareOf(part.count, total),
      cumulative: shareOf(before, total),
      ofBeads: part.key === null ? null : shareOf(part.count, beads),
    };
  });
  return { total, rows };
}

function chartOf(days: readonly DayCount[], period: Period): Result<FigureChart, TrendIssue> {
  const keyOf = period === "week" ? isoWeek : calendarMonth;
  const samples = new Map<string, { count: number; of: number }>();
  for (const { day, decided, rejected } of days) {
    const key = keyOf(day);
    if (key === null) return fail(issue("day-not-a-date", [], { day, beadId: "" }));
    const sample = samples.get(key) ?? { count: 0, of: 0 };
    samples.set(key, { count: sample.count + rejected, of: sample.of + decided });
  }
  // Both forms are padded, so that the order of text is the order of time.
  const sorted = [...samples].sort(([a], [b]) => (a < b ? -1 : 1));
  const chart = pChart(sorted.map(([label, sample]): Sample => ({ label, ...sample, beadIds: [] })));
  if (!chart.ok) return chart;
  return ok({ ...chart.value, points: chart.value.points.map(({ beadIds: _none, ...point }) => point) });
}
