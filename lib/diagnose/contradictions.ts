import type { SetupFact } from "@/lib/setup";
import { type ImperfectionId, ownEstimate } from "@/lib/trade";
import { imperfectionName } from "./evidence";
import type { DiagnoseInput } from "./input";
import { amountsOf, contradicts, recordedCause } from "./readings/facts";
import { factWeights } from "./tables/fact-weights";
import type { Contradiction } from "./types";

/** Marks that exclude each other on one stretch of bead. */
const opposites: readonly (readonly [ImperfectionId, ImperfectionId])[] = [
  ["convex-bead", "flat-wide-bead"],
  ["convex-bead", "concave-face"],
  ["undersized", "oversized"],
];

/** What in the record cannot all be right, said and not averaged away. The set-up's are lib/setup's to judge. */
export function contradictionsIn(
  input: DiagnoseInput,
  facts: readonly SetupFact[],
): readonly Contradiction[] {
  return [
    ...facts.filter(contradicts).map(inTheRecord),
    ...input.lookedForAbsent.filter((id) => marked(input, id)).map(bothMarkedAndAbsent),
    ...opposites.filter(([a, b]) => marked(input, a) && marked(input, b)).map(oppositeMarks),
  ];
}

function inTheRecord(fact: SetupFact): Contradiction {
  return {
    code: fact.code,
    sentence: factWeights[fact.code]?.contradiction ?? "",
    fields: fact.fields,
    causeId: recordedCause(fact),
    amounts: amountsOf(fact),
    source: fact.source,
  };
}

const marked = (input: DiagnoseInput, id: ImperfectionId) =>
  input.findings.some(({ imperfection }) => imperfection === id);

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
