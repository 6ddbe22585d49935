import type { DocumentId, ImperfectionId, Pattern, Place, Stretch } from "@/lib/trade";
import type { CauseId } from "../cause-ids";
import { hotter } from "./knobs";
import type { Ground } from "../witness";

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
  readonly witnesses: readonly Ground[];
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
  /** Left out: trade knowledge. */
  readonly witnesses?: readonly Ground[];
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
  witnesses: says.witnesses ?? ["memory"],
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
      witnesses: ["apprenticeship-notes", "covered-defects-guide"],
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
      witnesses: [
        "mig-parameters",
        "mig-handbook",
        "trade-reference-notes",
        "flux-cored-troubleshooting",
        "memory",
      ],
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
      witnesses: ["primer-porosity", "memory"],
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
      witnesses: ["low-hydrogen-porosity", "porosity-ranking", "memory"],
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
      witnesses: ["mig-troubleshooting"],
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
      witnesses: ["job-knowledge-42-porosity", "worm-hole-discussion"],
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
      witnesses: ["job-knowledge-42-porosity", "primer-porosity"],
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
      witnesses: ["welding-inspection-of-steels", "tungsten-arc-handbook", "covered-fillet-manual"],
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
      witnesses: ["glossary-undercut-craters", "covered-fillet-manual", "memory"],
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
      witnesses: ["mig-handbook", "job-knowledge-67-shape"],
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
      witnesses: ["covered-fault-table", "covered-fault-page"],
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
    witnesses: ["trade-reference-notes", "covered-fillet-manual"],
  }),
  look(
    "lap-both",
    ["overlap"],
    { places: ["both-toes"] },
    "Rolled over both plates: the pool was too cold to wet them.",
    {
      favours: ["wfs-low", "volt-low", "ctwd-long"],
      opposes: ["travel-slow", "work-angle", "placement"],
      witnesses: ["apprenticeship-notes"],
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
      witnesses: ["mig-parameters"],
    },
  ),
  look("balls-fine", ["spatter"], { patterns: ["fine"] }, "Fine scatter comes from a long arc.", {
    favours: ["volt-high", "arc-long"],
    opposes: ["volt-low"],
    witnesses: ["small-wire-manual-settings", "memory"],
  }),
  look(
    "balls-one-side",
    ["spatter"],
    { patterns: ["one-side"] },
    "Thrown to one side: the arc leans or is pushed.",
    {
      favours: ["drag-excess", "arc-blow"],
      opposes: ["volt-low", "volt-high"],
      witnesses: ["welding-fundamentals"],
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
      witnesses: ["practice-questions", "covered-fault-table"],
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
      witnesses: ["covered-fault-table", "modern-welding"],
    },
  ),
  look("slag-in-face", ["trapped-slag"], { places: ["face"] }, "Slag in the face ran ahead of the arc.", {
    favours: ["travel-slow", "push-on-slag", "pool-ahead", "downhill"],
    opposes: ["slag-left", "placement"],
    witnesses: ["welding-fundamentals", "self-shielded-best-practices"],
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
      witnesses: ["contact-tip-wear"],
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
      witnesses: ["trade-reference-notes"],
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
      witnesses: ["stainless-colours", "trade-reference-notes"],
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
      witnesses: ["trade-reference-notes", "dull-stainless"],
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
  ...contrary(
    "convex-bead",
    0.3,
    ["volt-high", "arc-long", "push-excess"],
    ["mig-handbook", "mig-parameters"],
  ),
  ...contrary(
    "flat-wide-bead",
    0.3,
    ["volt-low", "travel-fast", "arc-short", "ctwd-long", "drag-excess"],
    ["mig-handbook", "job-knowledge-67-shape", "welding-fundamentals"],
  ),
  ...contrary("flat-wide-bead", 0.5, ["wfs-low"], ["mig-parameters"]),
  ...contrary("concave-face", 0.4, ["volt-low", "travel-slow", "arc-short"], ["steel-connection-handbook"]),
  ...contrary("undersized", 0.3, ["travel-slow", "pass-too-big"]),
  ...contrary("oversized", 0.3, ["travel-fast"]),
  ...contrary("burn-through", 0.3, hotter),
  ...contrary("excess-penetration", 0.3, hotter),
  ...contrary("sagging", 0.4, hotter),
  ...contrary("overlap", 0.4, ["travel-fast", "volt-high"]),
  ...contrary("incomplete-penetration", 0.5, ["wfs-high", "thin-base"]),
  ...contrary("lack-of-fusion", 0.5, ["wfs-high", "thin-base", "heat-interpass"]),
];
