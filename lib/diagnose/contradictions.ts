import { checkSetup, type SetupCode } from "@/lib/setup";
import { type ImperfectionId, ownEstimate } from "@/lib/trade";
import type { CauseId } from "./cause-ids";
import { imperfectionName } from "./evidence";
import type { DiagnoseInput } from "./input";
import type { BeadPhysics } from "./physics";
import { entered } from "./readings/window";
import type { Contradiction } from "./types";

interface Said {
  readonly sentence: string;
  readonly causeId: CauseId | null;
}

/** Faults of the set-up that are contradictions of the record itself. The checking is lib/setup's. */
const setupContradictions: Partial<Readonly<Record<SetupCode, Said>>> = {
  "process-against-class": {
    sentence: "The electrode's class belongs to another process: one of the two is recorded wrongly.",
    causeId: null,
  },
  "polarity-against-class": {
    sentence: "The recorded polarity is not the one of the electrode's class.",
    causeId: "polarity",
  },
  "polarity-unusual-for-process": {
    sentence: "The recorded polarity is not used with this process on steel.",
    causeId: "polarity",
  },
  "gas-missing": { sentence: "A gas-shielded process is recorded without gas.", causeId: "gas-low" },
  "gas-on-gasless": {
    sentence: "Gas is recorded with an electrode that makes its own shield.",
    causeId: null,
  },
  "gas-against-class": {
    sentence: "The recorded gas is not one of the electrode's class.",
    causeId: "gas-wrong",
  },
  "gas-reactive-on-tungsten": {
    sentence: "The recorded gas burns a tungsten electrode.",
    causeId: "gas-wrong",
  },
  "gas-cannot-spray": {
    sentence: "Spray transfer is recorded with a gas that does not spray.",
    causeId: "gas-wrong",
  },
  "flow-without-gas": { sentence: "A gas flow is recorded, but no gas.", causeId: null },
  "position-against-class": {
    sentence: "The electrode's class is not made for this position.",
    causeId: null,
  },
  "progression-against-class": {
    sentence: "The electrode's class is not made for this direction of travel.",
    causeId: null,
  },
  "single-pass-wire-in-passes": {
    sentence: "A single-pass wire is recorded in more than one pass.",
    causeId: "single-pass-wire",
  },
  "push-on-slag": { sentence: "A slag process is recorded with a pushed gun.", causeId: "push-on-slag" },
  "feed-beyond-input": {
    sentence: "The recorded feed is more than this mains input can hold.",
    causeId: "input-power",
  },
  "travel-speed-disagrees": {
    sentence: "Recorded travel speed and length over time disagree.",
    causeId: null,
  },
};

/** Marks that exclude each other on one stretch of bead. */
const opposites: readonly (readonly [ImperfectionId, ImperfectionId])[] = [
  ["convex-bead", "flat-wide-bead"],
  ["convex-bead", "concave-face"],
  ["undersized", "oversized"],
];

/** What in the record cannot all be right, said and not averaged away. */
export function contradictionsIn(input: DiagnoseInput, physics: BeadPhysics): readonly Contradiction[] {
  return [
    ...checkSetup(input.setup).flatMap(({ code, fields, source }): readonly Contradiction[] => {
      const said = setupContradictions[code];
      return said ? [{ code, fields, amounts: [], source, ...said }] : [];
    }),
    ...currentDisagrees(input, physics),
    ...input.lookedForAbsent.filter((id) => marked(input, id)).map(bothMarkedAndAbsent),
    ...opposites.filter(([a, b]) => marked(input, a) && marked(input, b)).map(oppositeMarks),
  ];
}

const marked = (input: DiagnoseInput, id: ImperfectionId) =>
  input.findings.some(({ imperfection }) => imperfection === id);

/** Recorded current against feed and tip to work, beyond twice the model's error. */
function currentDisagrees(
  { setup }: DiagnoseInput,
  { currentA, burnOff }: BeadPhysics,
): readonly Contradiction[] {
  if (setup.amps === null || currentA === null || burnOff === null) return [];
  if (currentA < burnOff.range[0] || currentA > burnOff.range[1]) return [];
  if (Math.abs(setup.amps - currentA) <= 2 * burnOff.relativeError * currentA) return [];
  return [
    {
      code: "current-disagrees",
      sentence:
        "Recorded current does not fit feed and tip to work: read the meter while welding, and measure from tip to work.",
      fields: ["amps", "wireFeedMPerMin", "ctwdMm"],
      causeId: null,
      amounts: [
        entered("current recorded", setup.amps, "current"),
        {
          quantity: "current computed",
          valueSi: currentA,
          unitKind: "current",
          relativeError: burnOff.relativeError,
        },
      ],
      source: burnOff.source,
    },
  ];
}

const bothMarkedAndAbsent = (id: ImperfectionId): Contradiction => ({
  code: "marked-and-absent",
  sentence: `${imperfectionName(id)} is marked and also ticked as not found; the mark is believed.`,
  fields: ["findings", "lookedForAbsent"],
  causeId: null,
  amounts: [],
  source: ownEstimate,
});

const oppositeMarks = ([a, b]: readonly [ImperfectionId, ImperfectionId]): Contradiction => ({
  code: "opposite-marks",
  sentence: `${imperfectionName(a)} and ${imperfectionName(b).toLowerCase()} are both marked: on one stretch only one can be; if they alternate, something changed along the bead.`,
  fields: ["findings"],
  causeId: null,
  amounts: [],
  source: ownEstimate,
});
