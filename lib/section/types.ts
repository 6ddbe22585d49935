import type { Issue } from "@/lib/base";
import type { Point } from "@/lib/geometry";
import type { MeasureIssueCode, Quantity } from "@/lib/measure";
import type { SectionJoint } from "./drawing";

/** Every figure a section can give. What each one is, `sectionFigures` says. */
export const sectionFigureIds = [
  "leg-1",
  "leg-2",
  "leg-difference",
  "joint-angle",
  "throat",
  "nominal-throat",
  "throat-with-penetration",
  "convexity",
  "concavity",
  "root-penetration",
  "fusion-1-greatest",
  "fusion-1-least",
  "fusion-2-greatest",
  "fusion-2-least",
  "thickness",
  "penetration",
  "unreached",
  "face-width",
  "root-width",
  "reinforcement",
  "underfill",
  "root-reinforcement",
  "root-concavity",
  "weld-area",
  "fused-parent-area",
  "dilution",
] as const;
export type SectionFigureId = (typeof sectionFigureIds)[number];

/** mm, mm2, degrees or a ratio (0 to 1), by the quantity's own unit. Null: cannot be read from what is drawn. */
export type SectionFigures = Readonly<Record<SectionFigureId, Quantity | null>>;

/**
 * What is missing or wrong; `path` leads into the drawing, `data` may name the edge.
 * - `draw-outline`, `draw-edge` (`data.role`), `mark-root`: not drawn yet.
 * - `edge-has-no-direction` (`data.role`), `edges-parallel`: the corner cannot be found.
 * - `outline-crosses-itself`: no area.
 * - `toes-not-found`: the outline does not come to the edges.
 * - `edge-twice`, `edge-of-other-joint` (`data.role`): the drawing contradicts itself.
 * - `root-off-outline`: the root point lies away from the outline (`data.mm`).
 * - `no-thickness`: neither the back nor a thickness is known.
 * - `unknown-set` (`data.id`): no such criteria.
 * - `beyond-horizon` and the faults of the scale: as in `lib/measure`.
 */
export type SectionIssueCode =
  | "draw-outline"
  | "draw-edge"
  | "mark-root"
  | "edge-has-no-direction"
  | "edges-parallel"
  | "outline-crosses-itself"
  | "toes-not-found"
  | "edge-twice"
  | "edge-of-other-joint"
  | "root-off-outline"
  | "no-thickness"
  | "unknown-set"
  | MeasureIssueCode;
export type SectionIssue = Issue<SectionIssueCode>;

/** Where the figures were taken, in photo pixels, to be shown over the photo. Null: not found. */
export interface SectionPlaces {
  /** Plate 1 and 2, or left and right on the face. Points of the outline. */
  readonly toes: readonly [Point<"photo"> | null, Point<"photo"> | null];
  /** Theoretical root of a fillet: where the two plate lines meet. */
  readonly corner: Point<"photo"> | null;
  /** The weld's face from toe to toe as the figures take it: bent smoothly through the points. */
  readonly face: readonly Point<"photo">[] | null;
  /** The rest of the outline, likewise. */
  readonly fusion: readonly Point<"photo">[] | null;
}

export interface SectionMeasures {
  readonly joint: SectionJoint;
  readonly figures: SectionFigures;
  readonly places: SectionPlaces;
  /** Says for every figure of this joint that is null what to draw; empty when all are there. */
  readonly issues: readonly SectionIssue[];
}

/** What is known of the joint beside the photo. Null: not known. */
export interface SectionKnown {
  /** Butt: taken where the back is not drawn. */
  readonly plateThicknessMm: number | null;
}
