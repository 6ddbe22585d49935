import { cite, commonPractice, fromMemory, type ImperfectionId, imperfections, together } from "@/lib/trade";
import { imperfectionName } from "./evidence";
import type { DiagnoseInput } from "./input";
import type { Caution } from "./types";
import { weightsNote } from "./weights";
import { strongest } from "./witness";

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
    source: strongest("apprenticeship-notes", "trade-reference-notes"),
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
  strongest("galvanised-porosity"),
);
const chromium = plain(
  "chromium",
  "protect",
  "Fume from stainless holds hexavalent chromium: extract it at the arc and keep to the exposure limits of your country.",
  cite("osha-hexavalent-chromium", "seen-part"),
);
const fume = plain(
  "fume",
  "protect",
  "Ventilate, keep the head out of the plume, and cover eyes and skin from the arc; manganese in the fume harms the nerves.",
  together([cite("iarc-welding-fume", "seen-part"), cite("acgih-manganese", "seen-part")]),
);
const chipping = plain(
  "chipping",
  "protect",
  "Hot slag flies: wear safety glasses under the hood and gloves, and wait until the bead is no longer red.",
  together([cite("small-wire-manual-extension", "seen-part"), cite("ansi-z87-1", "seen-part")]),
);
const sight = plain(
  "sight",
  "note",
  "A picture shows the surface only: fusion, depth and what lies below are not visible, and pores at the surface often mean more underneath.",
  cite("army-tm-5-5420", "seen"),
);
const governing = plain(
  "governing",
  "note",
  "Try each change on scrap. Acceptance and repair follow the governing code, the procedure, the electrode's data sheet and qualified people.",
  commonPractice,
);
const ranking = plain("ranking", "note", weightsNote, fromMemory);
