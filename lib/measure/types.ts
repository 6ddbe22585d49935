import { z } from "zod";
import type { Issue, Result } from "@/lib/base";
import type { Homography, Point } from "@/lib/geometry";
import type { Scale } from "@/lib/marks";
import type { ImperfectionId, Place, Stretch } from "@/lib/trade";

/**
 * Where a figure comes from, in rising order of trust: read off the photo, stated by a person (a drawing, a setting of
 * the gun), read with a gauge on the weld itself.
 */
export const readingSources = ["photo", "stated", "gauge"] as const;

/**
 * What a standard uncertainty is made of. Parts of one budget are independent of each other, and normal but for
 * "near-side": a disc leaves two tilts open, so that error has two values and no others.
 */
export const budgetParts = [
  "picks",
  "scale-picks",
  "scale-length",
  "tilt",
  "near-side",
  "height",
  "lens",
  "resolution",
  "gauge-study",
] as const;
export type BudgetPartName = (typeof budgetParts)[number];

export const units = ["mm", "mm2", "deg", "ratio"] as const;

/**
 * One measured figure. `expandedUncertainty` is U = k u with k = 2 (JCGM 100:2008, 6.2), about 95 %, and with the k that
 * holds as much where a part is not normal (annex G); `budget` lists the standard uncertainties u it is combined from, in
 * the same unit.
 */
export const QuantitySchema = z.object({
  unit: z.enum(units),
  value: z.number(),
  expandedUncertainty: z.number().min(0),
  source: z.enum(readingSources),
  budget: z
    .array(
      z.object({
        part: z.enum(budgetParts),
        u: z.number().min(0),
        /** Of a part with two values only: how likely the rarer is. */
        odds: z.number().min(0).max(0.5).optional(),
      }),
    )
    .default([]),
  /** The gauge it was read with, when `source` is "gauge". */
  instrument: z.string().max(80).optional(),
});
export type Quantity = z.infer<typeof QuantitySchema>;
export type BudgetPart = Quantity["budget"][number];

/**
 * What the person's picks and the camera are taken to be. Every default is stated and can be replaced.
 * The defaults are own estimates; nothing here is a limit of a code.
 */
export interface MeasureOptions {
  /** Standard deviation of one pick, per axis, in pixels of the picture as the person viewed it. */
  readonly pickSigmaPx: number;
  /**
   * Photo pixels per viewed pixel when the marks were set: 4 for a 4000 px photo viewed 1000 px wide. Taken for every
   * point that does not carry its own (`grainPx`).
   */
  readonly photoPxPerViewPx: number;
  /** The upright photo's size, or null: then the lens part is a flat share instead of growing outwards. */
  readonly photo: { readonly widthPx: number; readonly heightPx: number } | null;
  /** Relative standard uncertainty of the stated length of the scale object. */
  readonly statedLengthRelativeU: number;
  /** How far from the plane of the scale the marked surface may lie, to either side (half-width, uniform). */
  readonly heightHalfWidthMm: number;
  /** Camera to weld; null: estimated from the width of the view for an ordinary phone lens. */
  readonly cameraDistanceMm: number | null;
  /** Standard deviation of the tilt about each axis that a two-point scale or a disc cannot see. */
  readonly tiltSigmaDeg: number;
  /** Standard deviation of the residual radial distortion at the photo's corner, as a share of the radius. */
  readonly lensCornerRelativeU: number;
}

export type MeasureIssueCode =
  | "no-scale"
  | "scale-points-coincide"
  | "scale-corners-crossed"
  | "scale-too-small"
  | "scale-not-an-ellipse"
  | "strip-does-not-fit"
  | "surface-too-high"
  | "beyond-horizon"
  | "outline-crosses-itself"
  | "no-weld-line"
  | "foreshortened";
export type MeasureIssue = Issue<MeasureIssueCode>;

/**
 * One mark in millimetres. Null: not measurable from what is there; `issues` says why. A gauge reading on the mark
 * replaces the photo's figure of the same quantity.
 */
export interface MeasuredMark {
  readonly id: string;
  readonly imperfection: ImperfectionId;
  readonly place: Place | null;
  readonly stretch: Stretch | null;
  /** Place along the weld line from its start, in mm; null without scale or weld line. */
  readonly alongMm: readonly [from: number, to: number] | null;
  /** Along the mark for a line, greatest extent for an outline. */
  readonly lengthMm: Quantity | null;
  /** Only ever from a gauge: a plan view shows no depth. */
  readonly depthMm: Quantity | null;
  /** Only ever from a gauge. */
  readonly heightMm: Quantity | null;
  /** Of a spot with a drawn radius; of an outline, the circle of equal area. */
  readonly diameterMm: Quantity | null;
  readonly areaMm2: Quantity | null;
  readonly issues: readonly MeasureIssue[];
}

/** In the plane of the scale, mm. */
export type PlanePoint = Point<"plane">;

/** A plane map: lens first (radial about the middle of the photo), then the homography, row by row. Photo px to mm. */
export interface PlaneMap {
  readonly homography: Homography<"photo", "plane">;
  readonly lens: {
    readonly centre: Point<"photo">;
    readonly halfDiagonalPx: number;
    readonly cornerShare: number;
  } | null;
}

/**
 * The plane the scale object lies on, in mm, with everything that may be wrong about it: each variation is the map
 * displaced by one standard uncertainty to either side, and the variations are independent of each other. A figure's
 * sensitivity to the scale is half its difference between the two, with whatever correlation the shared map puts on it.
 */
export interface Calibration {
  readonly kind: Scale["kind"];
  readonly map: PlaneMap;
  /** The middle of the scale object on the photo: whatever is mapped lies on its side of the horizon. */
  readonly middle: Point<"photo">;
  readonly variations: readonly {
    readonly part: BudgetPartName;
    readonly plus: PlaneMap;
    readonly minus: PlaneMap;
    /** The error is the one or the other and nothing between: how likely "plus" is. Left out: normal about the map. */
    readonly odds?: number;
  }[];
  /** Per axis, in photo pixels: what a pick is worth that does not say how it was viewed. */
  readonly pickSigmaPx: number;
  /** Per axis, in pixels of the picture as viewed: what a pick is worth that does say so. */
  readonly viewedSigmaPx: number;
  /** Scale at the middle of the scale object. */
  readonly mmPerPx: number;
  /** Tilt of the camera to the plane as far as the scale shows it; null when it cannot (two points). */
  readonly tiltDeg: number | null;
}

/** What a photo's scale came to: made once for a photo, and handed on to everything that is measured on it. */
export type Calibrated = Result<Calibration, MeasureIssue>;
