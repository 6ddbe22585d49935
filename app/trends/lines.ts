import { causeNames, imperfectionNames } from "@/app/filter-questions";
import type { GroupLine, ParetoLine, RejectPoint } from "@/components/trends";
import { filterQuery, UNKNOWN, type BeadFilter } from "@/lib/find";
import { periodDays, shareText, type FigureGroup, type FigurePoint, type FigureRow } from "@/lib/trends";
import { imperfectionIds } from "@/lib/trade";
import type { Grouping } from "./grouping";

const listOf = (filter: BeadFilter): string => `/?${filterQuery(filter)}`;

/** The list narrowed to a row's beads: by the one thing it stands for, by any of those a row of the rest gathers. */
function rowHref(filter: BeadFilter, field: "imperfection" | "cause", { key, keys }: FigureRow): string {
  if (key !== null && (filter[field] ?? key) === key) return listOf({ ...filter, [field]: key });
  return field === "cause"
    ? listOf({ ...filter, anyCause: [...keys] })
    : listOf({ ...filter, anyOf: imperfectionIds.filter((id) => keys.includes(id)) });
}

/** Rows of a Pareto with their names and the way to their beads. */
export function paretoLines(
  rows: readonly FigureRow[],
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
    cumulativeShare: row.cumulative.value ?? 0,
    ofBeads: row.ofBeads === null ? "" : shareText(row.ofBeads),
    href: rowHref(filter, field, row),
  }));
}

const later = (a: string, b: string | undefined): string => (b !== undefined && b > a ? b : a);
const earlier = (a: string, b: string | undefined): string => (b !== undefined && b < a ? b : a);

/** Points of the control chart. */
export function rejectPoints(points: readonly FigurePoint[], filter: BeadFilter): readonly RejectPoint[] {
  return points.map(({ label, share, lowerLimit, upperLimit, beyondLimit, limitsDoubtful }) => {
    const days = periodDays(label);
    const narrowed: BeadFilter = days
      ? { ...filter, from: later(days.from, filter.from), to: earlier(days.to, filter.to) }
      : filter;
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

/** What leads to the beads of a group: one word, several of one person, or the person themselves. */
function whoOf(person: FigureGroup["person"], keys: readonly string[], by: Grouping): BeadFilter {
  if (person !== null)
    return { person: person.id, ...(person.typed.length > 0 ? { anyWelder: [...person.typed] } : {}) };
  return keys.length > 1 ? { anyWelder: [...keys] } : { [by.field]: keys[0] ?? UNKNOWN };
}

/** Groups with the way to their beads. */
export function groupLines(
  groups: readonly FigureGroup[],
  filter: BeadFilter,
  by: Grouping,
): readonly GroupLine[] {
  return groups.map(({ key, beads, rejected, mostSeen, keys, standing, person }) => ({
    key: key ?? UNKNOWN,
    name: key === null ? (by.none ?? "Not recorded") : by.wordOf(key),
    also: keys.filter((one) => one !== key),
    standing,
    beads,
    decided: rejected.of,
    share: shareText(rejected),
    value: rejected.value,
    low: rejected.low,
    high: rejected.high,
    mostSeen: mostSeen && (imperfectionNames[mostSeen] ?? mostSeen),
    href: listOf({ ...filter, ...whoOf(person, keys, by) }),
  }));
}
