import { setupWords } from "@/app/filter-questions";
import type { BeadFilter, GroupColumn } from "@/lib/find";
import { fieldLabel, fieldRow, filterableFields, filterName } from "@/lib/setup";
import { periods, type Period } from "@/lib/trends";

/** One way to sort beads into groups, and the filter field that leads to a group's beads. */
export interface Grouping {
  readonly id: string;
  readonly label: string;
  readonly field: keyof BeadFilter;
  readonly column: GroupColumn;
  /** How a group is called. */
  wordOf(key: string): string;
  /** How those without a key are called, where it is not that nobody recorded one. */
  readonly none?: string;
}

export const groupings: readonly Grouping[] = [
  {
    id: "welder",
    label: "Welder",
    field: "welder",
    column: "welder",
    wordOf: (key) => key,
  },
  ...filterableFields
    .filter((field) => fieldRow(field).groups)
    .map((field): Grouping => ({
      id: filterName(field),
      label: fieldLabel(field),
      field: filterName(field),
      column: field,
      wordOf: (key) => setupWords(field)?.[key] ?? key,
    })),
  // Keys are ids; whoever shows them says the names they have in this shop.
  { id: "card", label: "Card", field: "card", column: "card", wordOf: (key) => key, none: "By no card" },
  { id: "trial", label: "Trial", field: "trial", column: "trial", wordOf: (key) => key, none: "In no trial" },
];

/** How the trends are asked for in an address: `by` and `period`; by welder and by week unless asked otherwise. */
export function groupingOf(params: URLSearchParams): {
  readonly by: Grouping;
  readonly period: Period;
  readonly unread: readonly string[];
} {
  const [first] = groupings;
  if (!first) throw new Error("no groupings");
  const askedBy = params.get("by") || first.id;
  const askedPeriod = params.get("period") || "week";
  const by = groupings.find(({ id }) => id === askedBy);
  const period = periods.find((one) => one === askedPeriod);
  return {
    by: by ?? first,
    period: period ?? "week",
    unread: [...(by ? [] : ["by"]), ...(period ? [] : ["period"])],
  };
}
