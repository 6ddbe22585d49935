import type { ImperfectionId, Joint, Place, Process, Stretch } from "@/lib/trade";
import type { CauseId } from "../cause-ids";
import type { WeightClass } from "../weights";

/** How the bead was run, as far as it decides which way gravity and the joint work. Everything given must hold. */
export interface When {
  /** Run uphill or overhead: the pool hangs. */
  readonly hanging?: true;
  /** Run downhill with a class that is made for it. */
  readonly downByClass?: true;
  readonly joints?: readonly Joint[];
  readonly processes?: readonly Process[];
  /** One of the marks lies there. */
  readonly stretches?: readonly Stretch[];
  readonly places?: readonly Place[];
}

/**
 * A circumstance in which a mark comes of other causes than usual. `makes` ties causes to it that otherwise make it little
 * or not at all; `opposes` takes the usual ones back.
 */
export interface Situation {
  readonly id: string;
  readonly when: When;
  readonly imperfections: readonly ImperfectionId[];
  readonly makes: Partial<Readonly<Record<CauseId, WeightClass>>>;
  readonly opposes: readonly CauseId[];
  /** What it tells, as a sentence; common practice where no source is named. */
  readonly sentence: string;
}

const WIRE_AND_ROD: readonly Process[] = ["FCAW-S", "FCAW-G", "GMAW", "SMAW"];
const COLD: readonly CauseId[] = [
  "wfs-low",
  "volt-low",
  "travel-fast",
  "ctwd-long",
  "base-cold-thick",
  "input-power",
  "work-lead",
  "arc-short",
];
const TOES: readonly Place[] = ["left-toe", "right-toe", "upper-toe", "lower-toe", "both-toes"];

export const situations: readonly Situation[] = [
  {
    id: "hanging-pool",
    when: { hanging: true, processes: WIRE_AND_ROD },
    imperfections: ["convex-bead", "overlap", "oversized", "sagging"],
    makes: {
      "wfs-high": "strong",
      "travel-slow": "middling",
      "volt-high": "middling",
      "pass-too-big": "middling",
      weave: "weak",
    },
    opposes: COLD,
    sentence: "Uphill and overhead a hot, fluid pool hangs and rolls over: flat settings are too much there.",
  },
  {
    id: "hanging-undercut",
    when: { hanging: true, processes: WIRE_AND_ROD },
    imperfections: ["undercut"],
    makes: { "wfs-high": "strong", weave: "middling", "volt-high": "middling", "arc-long": "middling" },
    opposes: ["travel-fast", "wfs-low", "placement"],
    sentence: "Uphill and overhead the metal runs away from toes that are too hot or left too soon.",
  },
  {
    id: "down-by-class",
    when: { downByClass: true },
    imperfections: ["trapped-slag", "overlap", "lack-of-fusion", "convex-bead", "incomplete-penetration"],
    makes: { "travel-slow": "strong", "pool-ahead": "middling" },
    opposes: ["downhill", "slag-left", "travel-fast"],
    sentence: "Downhill with a wire made for it, slag and pool must not overtake the arc.",
  },
  {
    id: "between-stringers",
    when: { joints: ["stringer-pad"], places: TOES },
    imperfections: ["trapped-slag", "lack-of-fusion", "overlap"],
    makes: { "slag-left": "strong", placement: "strong", "bead-shape": "middling" },
    opposes: ["travel-slow", "travel-fast", "wfs-low", "pool-ahead"],
    sentence:
      "Between the beads of one layer lies a valley: its slag must be chipped out, and the next bead aimed at the toe.",
  },
  {
    id: "at-a-restart",
    when: { stretches: ["restart"] },
    imperfections: [
      "overlap",
      "lack-of-fusion",
      "convex-bead",
      "trapped-slag",
      "irregular-surface",
      "poor-start",
    ],
    makes: { restart: "strong" },
    opposes: [
      "volt-low",
      "volt-high",
      "wfs-low",
      "wfs-high",
      "travel-fast",
      "travel-slow",
      "ctwd-long",
      "work-angle",
    ],
    sentence: "At a restart and nowhere else: the old crater was not melted into.",
  },
  {
    id: "struck-with-a-bare-tip",
    when: { processes: ["SMAW"], stretches: ["start"] },
    imperfections: ["surface-porosity", "wormhole"],
    makes: { "strike-tip": "strong" },
    opposes: ["moisture-plate", "contam", "arc-long", "travel-fast"],
    sentence: "A rod that was struck before has lost the covering at its tip: the first drops fall bare.",
  },
];
