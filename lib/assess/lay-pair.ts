import { applyHomography, multiplyHomography, type Homography, type Point } from "@/lib/geometry";
import { shapePoints, type Drawing } from "@/lib/marks";
import type { AlignedPhoto, ToFrame } from "./align-photo";

/** Units across the picture both photos are laid into. */
export const VIEW_WIDTH = 1000;

/** Kept free beyond the weld and its marks, share of the weld's length. */
const MARGIN = 0.08;
/** Above and below the outermost marks, besides, for the numbers that stand at them. */
const TAG_ROOM = 0.06;
/** At least so much of the plate is seen on either side of the axis, share of the weld's length. */
const LEAST_BESIDE = 0.2;
/** Marks farther away than this share of the weld's length do not widen the picture. */
const FARTHEST = 0.5;

interface Side {
  readonly aligned: AlignedPhoto;
  readonly drawing: Drawing;
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface LaidPhoto {
  /** Upright photo pixels to view units. */
  readonly toView: Homography<"photo", "view">;
  readonly heightUnits: number;
  /** What the left and right edge of the view read on the shared ruler; null where the photo is not to scale. */
  readonly rulerMm: { readonly from: number; readonly to: number } | null;
}

export interface LaidRow {
  readonly photos: readonly LaidPhoto[];
  /** All to scale: one ruler serves all. */
  readonly isShared: boolean;
}

const zoom = <From, To>(by: number): Homography<From, To> => [by, 0, 0, 0, by, 0, 0, 0, 1];
const shift = (x: number, y: number): Homography<"frame", "frame"> => [1, 0, x, 0, 1, y, 0, 0, 1];

/**
 * Photos laid into views of one width: welds horizontal, starts under one another, and one number of view units to the
 * millimetre where they are to scale. A turned photo without scale gets the longest of the others' welds; one as taken is
 * shown whole.
 */
export function layRow(sides: readonly Side[]): LaidRow {
  const ends = sides.flatMap(({ aligned }) => (aligned.kind === "to-scale" ? [aligned.endMm] : []));
  const length = ends.length > 0 ? Math.max(...ends) : 1;
  const frames = sides.map(({ aligned }) => frameOf(aligned, length));
  const seen = sides.flatMap(({ drawing }, i) => {
    const frame = frames[i];
    return frame ? pointsOf(drawing).map((point) => applyHomography(frame, point)) : [];
  });
  const window = windowOf(seen, length);
  const lay = (side: Side, frame: ToFrame | null | undefined): LaidPhoto =>
    frame ? laidIn(window, frame, side.aligned.kind === "to-scale") : whole(side);
  return {
    photos: sides.map((side, i) => lay(side, frames[i])),
    isShared: ends.length === sides.length,
  };
}

function frameOf(aligned: AlignedPhoto, length: number): ToFrame | null {
  if (aligned.kind === "as-taken") return null;
  return aligned.kind === "to-scale"
    ? aligned.toFrame
    : multiplyHomography(zoom<"frame", "frame">(length), aligned.toFrame);
}

function pointsOf({ weldLine, marks }: Drawing): readonly Point<"photo">[] {
  return [...(weldLine ?? []), ...marks.flatMap(({ shape }) => shapePoints(shape))];
}

interface Window {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Weld and marks of all, with a margin: x along the weld from its start, y across it, downwards. */
function windowOf(seen: readonly Point<"frame">[], length: number): Window {
  const margin = MARGIN * length;
  const across = margin + TAG_ROOM * length;
  const near = seen.filter(
    ({ x, y }) => x >= -FARTHEST * length && x <= (1 + FARTHEST) * length && Math.abs(y) <= FARTHEST * length,
  );
  const xs = near.map(({ x }) => x);
  const ys = near.map(({ y }) => y);
  return {
    left: Math.min(0, ...xs) - margin,
    right: Math.max(length, ...xs) + margin,
    top: Math.min(-LEAST_BESIDE * length, Math.min(...ys) - across),
    bottom: Math.max(LEAST_BESIDE * length, Math.max(...ys) + across),
  };
}

function laidIn({ left, right, top, bottom }: Window, frame: ToFrame, isToScale: boolean): LaidPhoto {
  const units = VIEW_WIDTH / (right - left);
  return {
    toView: multiplyHomography(zoom<"frame", "view">(units), multiplyHomography(shift(-left, -top), frame)),
    heightUnits: (bottom - top) * units,
    rulerMm: isToScale ? { from: left, to: right } : null,
  };
}

function whole({ widthPx, heightPx }: Side): LaidPhoto {
  const units = VIEW_WIDTH / widthPx;
  return { toView: zoom(units), heightUnits: heightPx * units, rulerMm: null };
}

/** Two photos laid so. */
export function layPair(
  before: Side,
  after: Side,
): { readonly photos: readonly [LaidPhoto, LaidPhoto]; readonly isShared: boolean } {
  const { photos, isShared } = layRow([before, after]);
  return { photos: [photos[0]!, photos[1]!], isShared };
}
