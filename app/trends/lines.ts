import { causeNames, imperfectionNames } from "@/app/filter-questions";
import type { GroupLine, ParetoLine, RejectPoint } from "@/components/trends";
import { filterQuery, UNKNOWN, type BeadFilter } from "@/lib/find";
import { periodDays, shareText, type ParetoRow, type PChartPoint, type TrendGroup } from "@/lib/trends";
import type { Grouping } from "./grouping";

const listOf = (filter: BeadFilter): string => `/?${filterQuery(filter)}`;

/** The list narrowed to a row's beads: by a word where one says it, by their ids where none does. */
function rowHref(filter: BeadFilter, field: "imperfection" | "cause", row: ParetoRow): string {
  const narrowed = filter[field] !== undefined && filter[field] !== row.key;
  return row.key === null || narrowed
    ? listOf({ ...filter, id: [...row.beadIds] })
    : listOf({ ...filter, [field]: row.key });
}

/** Rows of a Pareto with their names and the way to their beads. */
export function paretoLines(
  rows: readonly ParetoRow[],
  filter: BeadFilter,
  field: "imperfection" | "cause",
): readonly ParetoLine[] {
  const names = field === "cause" ? causeNames : imperfectionNames;
  return rows.map((row) => ({
    key: row.key ?? "rest",
    name: row.key === null ? `${row.keys.length} others` : (names[row.key] ?? row.key),
    count: row.count,
    share: shareText(row.share),
    cumulative: `${row.cumulative.count} of ${row.cumulative.of}`,
    beads: row.beadIds.length,
    href: rowHref(filter, field, row),
  }));
}

const later = (a: string, b: string | undefined): string => (b !== undefined && b > a ? b : a);
const earlier = (a: string, b: string | undefined): string => (b !== undefined && b < a ? b : a);

/** Points of the control chart. */
export function rejectPoints(points: readonly PChartPoint[], filter: BeadFilter): readonly RejectPoint[] {
  return points.map(({ label, share, lowerLimit, upperLimit, beyondLimit, limitsDoubtful, beadIds }) => {
    const days = periodDays(label);
    const narrowed: BeadFilter = days
      ? { ...filter, from: later(days.from, filter.from), to: earlier(days.to, filter.to) }
      : { ...filter, id: [...beadIds] };
    return {
      label,
      value: share.value ?? 0,
      low: share.low,
      high: share.high,
      lowerLimit,
      upperLimit,
      beyond: beyondLimit,
      rough: limitsDoubtful,
      text: shareText(share),
      href: listOf({ ...narrowed, verdict: filter.verdict ?? "decided" }),
    };
  });
}

/** Groups with the way to their beads. */
export function groupLines(
  groups: readonly TrendGroup[],
  filter: BeadFilter,
  by: Grouping,
): readonly GroupLine[] {
  return groups.map(({ key, beads, rejects, mostSeen }) => ({
    key: key ?? UNKNOWN,
    name: key === null ? "Not recorded" : by.wordOf(key),
    beads,
    decided: rejects.rejected.of,
    share: shareText(rejects.rejected),
    value: rejects.rejected.value,
    low: rejects.rejected.low,
    high: rejects.rejected.high,
    mostSeen: mostSeen && (imperfectionNames[mostSeen] ?? mostSeen),
    href: listOf({ ...filter, [by.field]: key ?? UNKNOWN }),
  }));
}
