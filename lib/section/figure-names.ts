import type { Source } from "@/lib/base";
import type { Quantity } from "@/lib/measure";
import { cite, together, withoutDocument } from "@/lib/trade";
import type { SectionJoint } from "./drawing";
import type { SectionFigureId } from "./types";

export interface SectionFigureInfo {
  readonly joints: readonly SectionJoint[];
  readonly unit: Quantity["unit"];
  readonly name: string;
  /** What is measured, in one sentence. */
  readonly meaning: string;
  /** Where the definition comes from. */
  readonly source: Source;
}

const aws = cite("aws-a3-0", "memory");
const iso = together([cite("iso-2553", "memory"), cite("iso-17659", "memory")]);
const own = withoutDocument("Toeline", "common-practice");

const fillet = (
  unit: Quantity["unit"],
  name: string,
  meaning: string,
  source: Source,
): SectionFigureInfo => ({ joints: ["fillet"], unit, name, meaning, source });
const butt = (name: string, meaning: string, source: Source): SectionFigureInfo => ({
  joints: ["butt"],
  unit: "mm",
  name,
  meaning,
  source,
});
const fusion = (side: 1 | 2, which: "Greatest" | "Least"): SectionFigureInfo => ({
  joints: ["fillet", "butt"],
  unit: "mm",
  name: `${which} fusion, side ${side}`,
  meaning: `How far below the old surface of side ${side} the metal was melted, at the ${which.toLowerCase()}; the outer tenth at each end is left out. Nought is no fusion there.`,
  source: own,
});

/** What each figure is called and what it means. */
export const sectionFigures: Readonly<Record<SectionFigureId, SectionFigureInfo>> = {
  "leg-1": fillet("mm", "Leg on plate 1", "From the corner of the joint to the toe, along plate 1.", iso),
  "leg-2": fillet("mm", "Leg on plate 2", "From the corner of the joint to the toe, along plate 2.", iso),
  "leg-difference": fillet("mm", "Difference of the legs", "Between the longer leg and the shorter.", iso),
  "joint-angle": fillet("deg", "Angle between the plates", "On the side of the weld.", own),
  throat: fillet("mm", "Throat", "Shortest way from the corner of the joint to the face of the weld.", aws),
  "nominal-throat": fillet(
    "mm",
    "Throat of the inscribed triangle",
    "Height of the largest triangle with two equal sides on the plates that fits into the weld.",
    iso,
  ),
  "throat-with-penetration": fillet(
    "mm",
    "Throat with penetration",
    "Shortest way from the deepest point of the root to the face of the weld.",
    aws,
  ),
  convexity: fillet("mm", "Convexity", "How far the face stands out over the line from toe to toe.", aws),
  concavity: fillet("mm", "Concavity", "How far the face lies below the line from toe to toe.", aws),
  "root-penetration": fillet(
    "mm",
    "Root penetration",
    "How far the root point lies beyond the corner of the joint, along the line that halves its angle. Below nought: the corner was not reached.",
    own,
  ),
  "fusion-1-greatest": fusion(1, "Greatest"),
  "fusion-1-least": fusion(1, "Least"),
  "fusion-2-greatest": fusion(2, "Greatest"),
  "fusion-2-least": fusion(2, "Least"),
  thickness: butt("Thickness", "Between the plates' face and back lines, at the weld.", own),
  penetration: butt(
    "Depth of penetration",
    "From the face line to the deepest point of the weld, no further than the back.",
    aws,
  ),
  unreached: butt(
    "Depth not reached",
    "What is left between the deepest point of the weld and the back.",
    own,
  ),
  "face-width": {
    joints: ["fillet", "butt"],
    unit: "mm",
    name: "Width of the face",
    meaning: "From toe to toe; on a butt along the face line.",
    source: aws,
  },
  "root-width": butt("Width of the root", "Where the weld meets the back line.", own),
  reinforcement: butt("Reinforcement", "How far the face of the weld stands above the face line.", aws),
  underfill: butt("Underfill", "How far the face of the weld lies below the face line.", aws),
  "root-reinforcement": butt("Root reinforcement", "How far the weld stands beyond the back line.", aws),
  "root-concavity": butt("Root concavity", "How far the root surface lies inside the back line.", aws),
  "weld-area": {
    joints: ["fillet", "butt"],
    unit: "mm2",
    name: "Area of the weld metal",
    meaning: "Inside the outline.",
    source: own,
  },
  "fused-parent-area": {
    joints: ["fillet", "butt"],
    unit: "mm2",
    name: "Melted parent metal",
    meaning: "The part of the weld metal that was plate before.",
    source: own,
  },
  dilution: {
    joints: ["fillet", "butt"],
    unit: "ratio",
    name: "Dilution",
    meaning: "Melted parent metal over the whole weld metal.",
    source: aws,
  },
};
