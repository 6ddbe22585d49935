import type { TableColumn } from "@/components/beads";
import { filterQuery, type BeadFilter } from "@/lib/find";

type Order = NonNullable<BeadFilter["sort"]>;

/** Head of each column, and the orders it goes through when pressed: upwards, then downwards. */
const heads: readonly {
  readonly key: TableColumn["key"];
  readonly label: string;
  readonly up?: Order;
  readonly down?: Order;
}[] = [
  { key: "number", label: "No.", up: "number", down: "number-down" },
  { key: "title", label: "Bead", up: "title", down: "title-down" },
  { key: "welder", label: "Welder", up: "welder", down: "welder-down" },
  { key: "day", label: "Day", up: "oldest", down: "newest" },
  { key: "setup", label: "How it was run" },
  { key: "seen", label: "Marked" },
  { key: "verdict", label: "Verdict" },
  { key: "next", label: "Try next" },
];

/** The columns of the list's table for what is asked now; a press on a head asks the same in the other order, from its start. */
export function tableColumns(filter: BeadFilter): readonly TableColumn[] {
  const now = filter.sort ?? "newest";
  return heads.map(({ key, label, up, down }) => {
    if (!up || !down) return { key, label, sort: null };
    // Days are looked at from the newest; everything else from its beginning.
    const first = key === "day" ? down : up;
    const other = first === up ? down : up;
    const sort = now === first ? other : first;
    return {
      key,
      label,
      sort: {
        href: `/?${filterQuery({ ...filter, sort })}`,
        now: now === up ? "ascending" : now === down ? "descending" : "none",
      },
    };
  });
}
