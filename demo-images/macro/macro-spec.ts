import type { ImperfectionId } from "@/lib/trade";

/** Millimetres in the plane of the section, x right, y up; the corner of a fillet or the middle of a butt at (0, 0). */
export type At = readonly [number, number];

/** Something in the section that is not sound metal. */
export interface MacroFault {
  readonly kind: ImperfectionId;
  /** How it is drawn: a hole, a glassy inclusion, a thin dark line, or a groove in the outside of the plate. */
  readonly look: "hole" | "inclusion" | "line" | "groove";
  /** A ring; for a line its two or more points. */
  readonly points: readonly At[];
  readonly sizes: Readonly<Record<string, number>>;
}

/** An edge of the joint as it was, named as the person draws it. */
export interface MacroEdge {
  readonly role: "plate-1" | "plate-2" | "face" | "back" | "groove-1" | "groove-2";
  readonly points: readonly At[];
}

/** A cut, polished and etched coupon. */
export interface MacroSpec {
  readonly title: string;
  readonly joint: "fillet" | "butt";
  /** The plates as cut, each a convex ring. */
  readonly plates: readonly (readonly At[])[];
  /** Around the weld metal, dense enough to be taken as the curve itself. */
  readonly outline: readonly At[];
  /** On plate 1 and plate 2; left and right on the face of a butt. Points of the outline. */
  readonly toes: readonly [At, At];
  readonly edges: readonly MacroEdge[];
  /** Deepest point of the root. */
  readonly root: At;
  /** Where plate lies on plate unmelted. */
  readonly seams: readonly (readonly At[])[];
  readonly faults: readonly MacroFault[];
  /** Lower boundaries of the runs after the first: y of each at x = 0, and how much they sag towards the sides. */
  readonly runs: readonly { readonly yMm: number; readonly sag: number }[];
  readonly hazMm: number;
  readonly sizes: Readonly<Record<string, number>>;
}
