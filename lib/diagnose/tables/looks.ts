import type { ImperfectionId, Pattern, Place, Stretch } from "@/lib/trade";
import type { CauseId } from "../cause-ids";
import type { DocumentId } from "./sources";

/** Something seen about how a mark lies, and which causes make it lie so. */
export interface Look {
  readonly id: string;
  readonly imperfections: readonly ImperfectionId[];
  readonly places: readonly Place[];
  readonly stretches: readonly Stretch[];
  readonly patterns: readonly Pattern[];
  readonly favours: readonly CauseId[];
  readonly opposes: readonly CauseId[];
  /** "clear": the look nearly settles it and speaks against every cause it does not favour; "usual": it leans that way. */
  readonly force: "clear" | "usual";
  /** What the look tells, as a clause that follows the name of the look. */
  readonly sentence: string;
  readonly documents: readonly DocumentId[];
  readonly memory: boolean;
}

type When = {
  readonly places?: readonly Place[];
  readonly stretches?: readonly Stretch[];
  readonly patterns?: readonly Pattern[];
};
type Says = {
  readonly favours?: readonly CauseId[];
  readonly opposes?: readonly CauseId[];
  readonly force?: Look["force"];
  readonly documents?: readonly DocumentId[];
  readonly memory?: boolean;
};

const look = (
  id: string,
  imperfections: readonly ImperfectionId[],
  when: When,
  sentence: string,
  says: Says,
): Look => ({
  id,
  imperfections,
  places: when.places ?? [],
  stretches: when.stretches ?? [],
  patterns: when.patterns ?? [],
  favours: says.favours ?? [],
  opposes: says.opposes ?? [],
  force: says.force ?? "usual",
  sentence,
  documents: says.documents ?? [],
  memory: says.memory ?? (says.documents ?? []).length === 0,
});

const PORES: readonly ImperfectionId[] = ["surface-porosity", "wormhole", "gas-mark"];

export const looks: readonly Look[] = [
  look(
    "pores-in-a-patch",
    PORES,
    { patterns: ["clustered"] },
    "Pores in one patch map to something at that spot.",
    {
      favours: ["contam", "coating", "moisture-plate"],
      opposes: [
        "gas-low",
        "gas-high",
        "draft",
        "polarity",
        "nozzle-fouled",
        "volt-high",
        "damp-consumable",
        "ctwd-short",
      ],
      documents: ["C1", "C13"],
    },
  ),
  look(
    "pores-all-along",
    PORES,
    { stretches: ["whole-length"] },
    "Pores from end to end come from something that is wrong all the time.",
    {
      favours: ["gas-low", "draft", "nozzle-fouled", "polarity", "damp-consumable"],
      opposes: ["no-preflow", "strike-tip", "crater-unfilled"],
      documents: ["B13", "B14", "C2", "C12"],
      memory: true,
    },
  ),
  look(
    "pores-one-side",
    PORES,
    { patterns: ["one-side"] },
    "Pores on one side point to wind from that side.",
    {
      favours: ["draft", "drag-excess"],
      opposes: ["contam", "damp-consumable"],
    },
  ),
  look(
    "pores-now-and-then",
    PORES,
    { patterns: ["intermittent"] },
    "Pores that come and go follow the plate or the wind, not the settings.",
    {
      favours: ["coating", "contam", "draft"],
      opposes: ["polarity", "volt-high", "gas-high", "ctwd-short"],
      documents: ["B17"],
      memory: true,
    },
  ),
  look(
    "pores-at-start",
    PORES,
    { stretches: ["start", "restart"] },
    "Pores at the start only come from the first second of the arc.",
    {
      favours: ["strike-tip", "no-preflow", "moisture-plate"],
      opposes: [
        "damp-consumable",
        "polarity",
        "gas-low",
        "gas-high",
        "nozzle-fouled",
        "draft",
        "contam",
        "volt-high",
        "ctwd-short",
      ],
      force: "clear",
      documents: ["B19", "B10"],
      memory: true,
    },
  ),
  look(
    "pores-at-end",
    PORES,
    { stretches: ["crater"] },
    "Pores in the crater only: the cover was lost before the metal froze.",
    {
      favours: ["crater-unfilled"],
      opposes: ["contam", "damp-consumable", "polarity", "gas-low", "draft", "volt-high"],
      documents: ["B11"],
    },
  ),
  look(
    "herringbone",
    ["wormhole"],
    { patterns: ["herringbone"] },
    "A herringbone comes from gas that is fed all the time the metal freezes.",
    {
      favours: ["contam", "damp-consumable", "coating"],
      opposes: ["draft", "travel-fast"],
      documents: ["A2", "C14"],
    },
  ),
  look(
    "pores-in-line",
    ["wormhole", "surface-porosity"],
    { patterns: ["in-line"] },
    "A line of pores along the joint comes out of the crevice under it.",
    {
      favours: ["coating", "moisture-plate"],
      opposes: ["gas-low", "gas-high", "draft"],
      documents: ["A2", "B17"],
    },
  ),
  look(
    "undercut-upper",
    ["undercut"],
    { places: ["upper-toe"] },
    "At the upper toe only, the aim or the size of the pass is to blame.",
    {
      favours: ["work-angle", "placement", "pass-too-big"],
      opposes: ["volt-high", "arc-long", "weave"],
      documents: ["A4", "B4", "C3"],
    },
  ),
  look(
    "undercut-one-toe",
    ["undercut", "lack-of-fusion", "overlap"],
    { places: ["lower-toe", "left-toe", "right-toe"], patterns: ["one-side"] },
    "One toe only points to aim, not to a setting.",
    {
      favours: ["work-angle", "placement", "arc-blow"],
      opposes: ["volt-high", "volt-low", "wfs-high", "wfs-low", "arc-long"],
      documents: ["B24", "C3"],
      memory: true,
    },
  ),
  look(
    "undercut-both-toes",
    ["undercut"],
    { places: ["both-toes"] },
    "Both toes alike point to travel or a setting, not to aim.",
    {
      favours: ["travel-fast", "volt-high", "arc-long", "wfs-high"],
      opposes: ["work-angle", "placement", "pass-too-big"],
      documents: ["B14", "A1"],
    },
  ),
  look(
    "undercut-at-turns",
    ["undercut", "trapped-slag", "overlap"],
    { patterns: ["weave-turns"] },
    "It lies where the weave turns: no pause at the toe.",
    {
      favours: ["weave"],
      opposes: [
        "travel-fast",
        "volt-high",
        "arc-long",
        "wfs-high",
        "work-angle",
        "placement",
        "electrode-large",
      ],
      force: "clear",
      documents: ["C4", "C5"],
    },
  ),
  look(
    "toes-in-stretches",
    ["undercut", "overlap", "convex-bead", "lack-of-fusion"],
    { patterns: ["intermittent", "periodic"] },
    "Short stretches with good bead between them point to the hand, not to a setting.",
    {
      favours: ["travel-uneven", "work-angle", "weave"],
      opposes: ["volt-high", "volt-low", "wfs-high", "wfs-low"],
    },
  ),
  look("lap-lower", ["overlap"], { places: ["lower-toe"] }, "Rolled over the lower plate: the pool sagged.", {
    favours: ["travel-slow", "pass-too-big", "work-angle"],
    opposes: ["weave", "volt-low"],
    documents: ["C2", "C3"],
  }),
  look(
    "lap-both",
    ["overlap"],
    { places: ["both-toes"] },
    "Rolled over both plates: the pool was too cold to wet them.",
    {
      favours: ["wfs-low", "volt-low", "ctwd-long"],
      opposes: ["travel-slow", "work-angle", "placement"],
      documents: ["C1"],
    },
  ),
  look(
    "cold-both",
    ["lack-of-fusion"],
    { places: ["both-toes"] },
    "Both toes cold points to heat or travel, not to aim.",
    {
      favours: ["wfs-low", "travel-fast", "volt-low", "base-cold-thick", "ctwd-long"],
      opposes: ["work-angle", "placement", "arc-blow"],
    },
  ),
  look(
    "balls-coarse",
    ["spatter"],
    { patterns: ["coarse"] },
    "Large sticky balls come from a stubbing arc.",
    {
      favours: ["volt-low", "gas-wrong", "wfs-high"],
      opposes: ["volt-high", "arc-long"],
      documents: ["B13"],
    },
  ),
  look("balls-fine", ["spatter"], { patterns: ["fine"] }, "Fine scatter comes from a long arc.", {
    favours: ["volt-high", "arc-long"],
    opposes: ["volt-low"],
    documents: ["C9"],
    memory: true,
  }),
  look(
    "balls-one-side",
    ["spatter"],
    { patterns: ["one-side"] },
    "Thrown to one side: the arc leans or is pushed.",
    {
      favours: ["drag-excess", "arc-blow"],
      opposes: ["volt-low", "volt-high"],
      documents: ["B2"],
    },
  ),
  look(
    "slag-at-restart",
    ["trapped-slag"],
    { stretches: ["restart", "start"] },
    "Slag at a restart was left there by the bead before.",
    {
      favours: ["slag-left"],
      opposes: ["travel-slow", "wfs-low"],
      documents: ["C16", "C4"],
    },
  ),
  look(
    "slag-at-toe",
    ["trapped-slag"],
    { places: ["upper-toe", "lower-toe", "left-toe", "right-toe", "both-toes"] },
    "Slag along a toe sits in a notch between beads.",
    {
      favours: ["slag-left", "placement", "bead-shape", "volt-low", "weave"],
      opposes: ["pool-ahead"],
      documents: ["C4", "B3"],
    },
  ),
  look("slag-in-face", ["trapped-slag"], { places: ["face"] }, "Slag in the face ran ahead of the arc.", {
    favours: ["travel-slow", "push-on-slag", "pool-ahead", "downhill"],
    opposes: ["slag-left", "placement"],
    documents: ["B2", "B6"],
  }),
  look(
    "width-periodic",
    ["uneven-width", "wandering", "irregular-surface"],
    { patterns: ["periodic"] },
    "Swells at even distances follow the hand.",
    {
      favours: ["travel-uneven", "ctwd-uneven", "weave"],
      opposes: ["tip-feed", "work-lead", "input-power"],
    },
  ),
  look(
    "width-random",
    ["uneven-width", "wandering", "irregular-surface"],
    { patterns: ["intermittent", "scattered"] },
    "Swells without order follow the machine.",
    {
      favours: ["tip-feed", "work-lead", "input-power", "arc-blow"],
      opposes: ["travel-uneven", "heat-interpass"],
      documents: ["B34"],
    },
  ),
  look(
    "colour-root",
    ["temper-colour"],
    { places: ["root"] },
    "Colour or crust at the root: the back met the air.",
    {
      favours: ["no-purge"],
      opposes: ["gas-low", "draft", "heat-interpass", "travel-fast", "slag-hot", "ctwd-long"],
      force: "clear",
      documents: ["C2"],
    },
  ),
  look(
    "colour-even",
    ["temper-colour"],
    { patterns: ["continuous"], stretches: ["whole-length"] },
    "An even tint all along points to heat.",
    {
      favours: ["heat-interpass", "wfs-high", "travel-slow"],
      opposes: ["draft", "contam"],
      documents: ["B31", "C2"],
    },
  ),
  look(
    "colour-one-side",
    ["temper-colour"],
    { patterns: ["one-side", "with-dull-grey-face"] },
    "A grey crust or one side only points to lost cover.",
    {
      favours: ["gas-low", "draft", "travel-fast", "ctwd-long"],
      opposes: ["heat-interpass", "slag-hot"],
      documents: ["C2", "B18"],
    },
  ),
  look("hole-at-end", ["burn-through"], { stretches: ["crater"] }, "At the end the part had grown hot.", {
    favours: ["heat-interpass", "travel-slow"],
    opposes: ["ctwd-short"],
  }),
];

/** -log(1 - q) of the link is multiplied by this. Own estimate; capped by nature, since q stays below 1. */
export const lookForce: Readonly<
  Record<Look["force"], { readonly favours: number; readonly opposes: number }>
> = {
  usual: { favours: 2.5, opposes: 0.35 },
  clear: { favours: 5, opposes: 0.12 },
};

/**
 * Marks that are the opposite of what a cause makes: their presence speaks against it, by this factor on its odds. A
 * noisy-OR can only say what a cause makes, not what it prevents. Own estimates; the pairs follow from the shape.
 */
export interface Contrary {
  readonly imperfection: ImperfectionId;
  readonly cause: CauseId;
  readonly factor: number;
  readonly documents: readonly DocumentId[];
}
const contrary = (
  imperfection: ImperfectionId,
  factor: number,
  causes: readonly CauseId[],
  documents: readonly DocumentId[] = [],
): readonly Contrary[] => causes.map((cause) => ({ imperfection, cause, factor, documents }));

export const contraries: readonly Contrary[] = [
  ...contrary("convex-bead", 0.3, ["volt-high", "arc-long", "push-excess"], ["B14", "B13"]),
  ...contrary(
    "flat-wide-bead",
    0.3,
    ["volt-low", "travel-fast", "arc-short", "ctwd-long", "drag-excess"],
    ["B14", "A1", "B2"],
  ),
  ...contrary("flat-wide-bead", 0.5, ["wfs-low"], ["B13"]),
  ...contrary("concave-face", 0.4, ["volt-low", "travel-slow", "arc-short"], ["A7"]),
  ...contrary("undersized", 0.3, ["travel-slow", "pass-too-big"]),
  ...contrary("oversized", 0.3, ["travel-fast"]),
  ...contrary("burn-through", 0.3, ["wfs-low", "travel-fast", "ctwd-long", "base-cold-thick", "input-power"]),
  ...contrary("excess-penetration", 0.3, [
    "wfs-low",
    "travel-fast",
    "ctwd-long",
    "base-cold-thick",
    "input-power",
  ]),
  ...contrary("overlap", 0.4, ["travel-fast", "volt-high"]),
  ...contrary("incomplete-penetration", 0.5, ["wfs-high", "thin-base"]),
];
