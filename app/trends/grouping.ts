import { polarityWords, positionWords, processWords, jointWords, progressionWords } from "@/lib/report";
import type { BeadFilter, ObservedBead } from "@/lib/record";
import { periods, type Period } from "@/lib/trends";

/** One way to sort beads into groups, and the filter field that leads to a group's beads. */
export interface Grouping {
  readonly id: string;
  readonly label: string;
  readonly field: keyof BeadFilter;
  keyOf(one: ObservedBead): string | null;
  /** How a group is called. */
  wordOf(key: string): string;
}

const words =
  (table: Readonly<Record<string, string>>) =>
  (key: string): string =>
    table[key] ?? key;
const asIs = (key: string): string => key;

export const groupings: readonly Grouping[] = [
  { id: "welder", label: "Welder", field: "welder", keyOf: ({ welder }) => welder, wordOf: asIs },
  {
    id: "class",
    label: "Wire class",
    field: "class",
    keyOf: ({ electrodeClass }) => electrodeClass,
    wordOf: asIs,
  },
  { id: "joint", label: "Joint", field: "joint", keyOf: ({ joint }) => joint, wordOf: words(jointWords) },
  {
    id: "position",
    label: "Position",
    field: "position",
    keyOf: ({ position }) => position,
    wordOf: words(positionWords),
  },
  {
    id: "process",
    label: "Process",
    field: "process",
    keyOf: ({ process }) => process,
    wordOf: words(processWords),
  },
  {
    id: "polarity",
    label: "Polarity",
    field: "polarity",
    keyOf: ({ bead }) => bead.content.setup.polarity,
    wordOf: words(polarityWords),
  },
  {
    id: "progression",
    label: "Progression",
    field: "progression",
    keyOf: ({ bead }) => bead.content.setup.progression,
    wordOf: words(progressionWords),
  },
  { id: "gas", label: "Gas", field: "gas", keyOf: ({ bead }) => bead.content.setup.gas, wordOf: asIs },
  {
    id: "transfer",
    label: "Transfer",
    field: "transfer",
    keyOf: ({ bead }) => bead.content.setup.transfer,
    wordOf: asIs,
  },
  {
    id: "metal",
    label: "Base metal",
    field: "metal",
    keyOf: ({ bead }) => bead.content.setup.baseMetal,
    wordOf: asIs,
  },
  {
    id: "power",
    label: "Input power",
    field: "power",
    keyOf: ({ bead }) => bead.content.setup.inputPower,
    wordOf: asIs,
  },
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
