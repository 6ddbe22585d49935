import { imperfections, type ImperfectionId } from "@/lib/trade";
import { cite, commonPractice, memorySource } from "./cite";
import { imperfectionName } from "./evidence";
import type { DiagnoseInput } from "./input";
import type { Caution } from "./types";
import { weightsNote } from "./weights";

/** Whether a qualified inspector comes before any change. */
export function inspectorFirst(input: DiagnoseInput): readonly ImperfectionId[] {
  const marked = new Set(input.findings.map(({ imperfection }) => imperfection));
  return [...marked].filter((id) => imperfections[id].inspectorFirst).toSorted();
}

/** The usual cautions that this bead calls for, and what a picture cannot tell. Never empty. */
export function cautionsFor(input: DiagnoseInput): readonly Caution[] {
  const { setup } = input;
  const stops = inspectorFirst(input).map((id) => stop(id));
  const zinc =
    setup.surface === "galvanised" ||
    setup.surface === "primed" ||
    input.answers["plate-coating"] === "fault";
  return [
    ...stops,
    ...(zinc ? [zincCaution] : []),
    ...(setup.baseMetal === "stainless" ? [chromium] : []),
    fume,
    chipping,
    sight,
    governing,
    ranking,
  ];
}

function stop(id: ImperfectionId): Caution {
  return {
    code: `inspector-first:${id}`,
    level: "stop",
    sentence: `${imperfectionName(id)}: on work that matters a qualified inspector sees it before anything is changed, ground or welded over.`,
    amounts: [],
    source: cite(["C1", "C2"], false)[0]!,
  };
}

const plain = (
  code: string,
  level: Caution["level"],
  sentence: string,
  source: Caution["source"],
): Caution => ({
  code,
  level,
  sentence,
  amounts: [],
  source,
});

const zincCaution = plain(
  "zinc",
  "protect",
  "Zinc and primer fume makes ill: strip the coating before welding and ventilate strongly.",
  cite(["B16"], false)[0]!,
);
const chromium = plain(
  "chromium",
  "protect",
  "Fume from stainless holds hexavalent chromium: extract it at the arc and keep to the exposure limits of your country.",
  {
    document: "OSHA 29 CFR 1910.1026, hexavalent chromium",
    edition: "2006",
    confidence: "seen-part",
  },
);
const fume = plain(
  "fume",
  "protect",
  "Ventilate, keep the head out of the plume, and cover eyes and skin from the arc; manganese in the fume harms the nerves.",
  {
    document: "IARC classification of welding fume; ACGIH limit for manganese (2013)",
    confidence: "seen-part",
  },
);
const chipping = plain(
  "chipping",
  "protect",
  "Hot slag flies: wear safety glasses under the hood and gloves, and wait until the bead is no longer red.",
  {
    document: "Small wire-feed manual: slag removal; ANSI/ISEA Z87.1 eye protection",
    edition: "n.d.",
    confidence: "seen-part",
  },
);
const sight = plain(
  "sight",
  "note",
  "A picture shows the surface only: fusion, depth and what lies below are not visible, and pores at the surface often mean more underneath.",
  {
    document: "Army TM 5-5420-279-23, appendix K, visual examination",
    edition: "n.d.",
    confidence: "seen",
  },
);
const governing = plain(
  "governing",
  "note",
  "Try each change on scrap. Acceptance and repair follow the governing code, the procedure, the electrode's data sheet and qualified people.",
  commonPractice,
);
const ranking = plain("ranking", "note", weightsNote, memorySource);
