import type { Issue } from "@/lib/base";
import type { Point } from "@/lib/geometry";

/** Pixels as a canvas or a decoder gives them: four bytes a pixel, row by row. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8ClampedArray | Uint8Array;
}

/** What the network is handed: red, green and blue planes of STRIP.rows x STRIP.columns, 0 to 1. */
export type StripPlanes = Float32Array;

/**
 * What the network answers: for the upper and the lower toe, for STRIP.rows rows and a last one that says "none here", and
 * for every second column, a logit.
 */
export type ToeLogits = Float32Array;

/** Whoever runs the network: a worker in the browser, a session in Node, a drawn truth in a test. */
export type ReadStrip = (planes: StripPlanes) => Promise<ToeLogits>;

/** Whoever runs the finder: planes of a square in, a logit for each cell of its map out (`SQUARE`). */
export type ReadWhole = (planes: Float32Array) => Promise<Float32Array>;

/**
 * What the finder of holes and spatter answers for a tile, TILE.answer cells square: a logit for a hole, one for a ball of
 * spatter, and the logarithm of its radius in pixels of the tile.
 */
export type TileAnswer = Float32Array;

/** Whoever runs the finder of spots: planes of a tile in (`TILE`), its maps out. */
export type ReadTile = (planes: Float32Array) => Promise<TileAnswer>;

/** One toe at one column. */
export interface ToePoint {
  readonly at: Point<"photo">;
  /** Standard deviation across the weld, photo pixels. */
  readonly sigmaPx: number;
  /** Spread of the network's own answer, in widths of the bead. */
  readonly spread: number;
  /** How sure the reader is that the toe is about here, 0 to 1. */
  readonly sure: number;
}

/** The bead cut across at one column of the strip. */
export interface TraceStation {
  /** Along the weld line from its first end, photo pixels; negative before it. */
  readonly alongPx: number;
  readonly upper: ToePoint;
  readonly lower: ToePoint;
  readonly widthPx: number;
  /** Near a rounded end: drawn, but in no figure. */
  readonly end: boolean;
}

export interface Trace {
  readonly stations: readonly TraceStation[];
  /** Median, photo pixels. */
  readonly widthPx: number;
  readonly lengthPx: number;
}

export type TraceIssueCode =
  | "line-too-short"
  | "no-bead"
  | "line-beside-bead"
  | "bead-too-small"
  | "photo-blurred"
  | "light-blown"
  | "not-sure-enough"
  | "no-bead-in-picture"
  | "two-beads"
  | "line-unclear";
export type TraceIssue = Issue<TraceIssueCode>;
