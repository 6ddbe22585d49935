import {
  cite,
  commonPractice,
  type ElectrodeClass,
  fromMemory,
  type ImperfectionId,
  imperfections,
  together,
} from "@/lib/trade";
import type { CauseId } from "./cause-ids";
import { imperfectionName } from "./evidence";
import type { DiagnoseInput } from "./input";
import type { Caution, Change } from "./types";
import { weightsNote } from "./weights";
import { strongest } from "./witness";

/** Whether a qualified inspector comes before any change. */
export function inspectorFirst(input: DiagnoseInput): readonly ImperfectionId[] {
  const marked = new Set(input.findings.map(({ imperfection }) => imperfection));
  return [...marked].filter((id) => imperfections[id].inspectorFirst).toSorted();
}

/**
 * The usual cautions that this bead and the changes proposed for it call for, and what a picture cannot tell. Never empty.
 * A change that hurts somebody by itself (stripping zinc, degreasing, purging, preheating) brings its own.
 */
export function cautionsFor(
  input: DiagnoseInput,
  electrode: ElectrodeClass | null,
  changes: readonly Change[],
): readonly Caution[] {
  const { setup, answers } = input;
  const causes = changes.map(({ causeId }) => causeId);
  const zinc =
    setup.surface === "galvanised" ||
    setup.surface === "primed" ||
    answers["plate-coating"] === "fault" ||
    causes.includes("coating");
  const wet = setup.surface === "wet" || answers["plate-dry"] === "fault";
  const stainless = setup.baseMetal === "stainless" || electrode?.metal === "stainless";
  return [
    ...inspectorFirst(input).map(stop),
    shock,
    ...(wet ? [wetPlace] : []),
    ...(zinc ? [zincCaution] : []),
    ...(stainless ? [chromium] : []),
    ...changeCautions
      .filter(({ when }) => causes.some((cause) => when.includes(cause)))
      .map(({ caution }) => caution),
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

const shock = plain(
  "shock",
  "protect",
  "Electric shock kills: switch off and unplug before you touch leads, lugs, tip or drive rolls or open the machine; dry gloves, dry floor, whole insulation.",
  cite("ansi-z49-1", "memory"),
);
const wetPlace = plain(
  "wet",
  "protect",
  "In the wet the welding current can take its way through you: dry plate, gloves and floor first, and stand on something that insulates.",
  cite("ansi-z49-1", "memory"),
);

/** What a change can do to somebody, by its cause. */
const changeCautions: readonly { readonly when: readonly CauseId[]; readonly caution: Caution }[] = [
  {
    when: ["contam"],
    caution: plain(
      "solvent",
      "protect",
      "Never weld where a chlorinated solvent was used: its vapour turns to phosgene under the arc. Let any solvent dry off, and take can and rags away.",
      cite("ansi-z49-1", "memory"),
    ),
  },
  {
    when: ["no-purge", "gas-low"],
    caution: plain(
      "asphyxiation",
      "protect",
      "Shielding and purge gas smothers without warning in pits, vessels and low corners: ventilate, and measure oxygen before anyone goes in.",
      cite("ansi-z49-1", "memory"),
    ),
  },
  {
    when: ["base-cold-thick", "moisture-plate", "hydrogen"],
    caution: plain(
      "preheat",
      "note",
      "Preheat only as the procedure for this steel and thickness says: too little does nothing, too much harms some steels and zinc or paint fumes again.",
      commonPractice,
    ),
  },
];

const zincCaution = plain(
  "zinc",
  "protect",
  "Zinc and primer fume makes ill: strip the coating before welding, not with the arc, and ventilate strongly; grinding dust of it is no better.",
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
