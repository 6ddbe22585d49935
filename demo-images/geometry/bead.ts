import { fractalNoise1, noise1, smoothstep } from "../noise/noise";
import { restartSwell, type Restart } from "./restart";
import { createRipples, type Ripples, type RippleShape } from "./ripples";

/** One pass as laid, before imperfections. Lengths in mm, x along the weld. */
export interface BeadShape {
  readonly name: string;
  readonly startMm: number;
  readonly endMm: number;
  /** Nominal toes across the weld (plan y). */
  readonly leftMm: number;
  readonly rightMm: number;
  /** Height of the face above the line that joins the toes; negative for a hollow face. */
  readonly crownMm: number;
  /** Fullness of the face: 1 a parabola with a smooth tie-in, lower is rounder and steeper at the toes. */
  readonly capPower: number;
  readonly ripple: RippleShape;
  /** Sub-millimetre raggedness of the toes. */
  readonly raggedMm: number;
  readonly wanderMm: number;
  readonly wanderLengthMm: number;
  /** Swelling and narrowing as a share of the width. */
  readonly unevenWidth: number;
  readonly unevenLengthMm: number;
  /** Extra height of the start as a share of the crown; a cold start is a lump. */
  readonly startLump: number;
  readonly restart: Restart | null;
  readonly craterDepthMm: number;
  /** Surface roughness of the frozen metal, mm. */
  readonly roughMm: number;
  readonly seed: number;
}

export const goodBead = {
  capPower: 1.1,
  raggedMm: 0.12,
  wanderMm: 0.25,
  wanderLengthMm: 38,
  unevenWidth: 0.035,
  unevenLengthMm: 9,
  startLump: 0.25,
  restart: null,
  craterDepthMm: 0.5,
  roughMm: 0.012,
} as const;

export interface Toes {
  readonly leftMm: number;
  readonly rightMm: number;
}

export interface Bead {
  readonly shape: BeadShape;
  readonly ripples: Ripples;
  /** The toes at x (plan y, mm), or null beyond the ends of the bead. */
  toesAt(xMm: number): Toes | null;
  /** Height of the face above the toe line at its middle, mm. */
  crownAt(xMm: number): number;
}

/** How much of the full width is there at a distance from the end, 0 to 1: a rounded end. */
function endFullness(distanceMm: number, radiusMm: number): number {
  if (distanceMm >= radiusMm) return 1;
  const t = 1 - Math.max(0, distanceMm) / radiusMm;
  return Math.sqrt(Math.max(0, 1 - t * t));
}

/** What the widths and heights of one bead are worked out from. */
interface Course {
  readonly shape: BeadShape;
  readonly ripples: Ripples;
  readonly half: number;
  /** No end is a half-circle: each side comes to its full width a little later than the other, mm. */
  readonly lags: readonly [number, number];
}

function courseOf(shape: BeadShape): Course {
  const half = (shape.rightMm - shape.leftMm) / 2;
  const lag = (n: number): number =>
    half * (0.25 + 0.5 * shape.startLump) * Math.abs(noise1(shape.seed * 0.7 + n * 3.3, 3));
  const earlier = Math.min(lag(0), lag(1));
  return {
    shape,
    ripples: createRipples(shape.ripple, shape.startMm, shape.endMm, shape.seed),
    half,
    lags: [lag(0) - earlier, lag(1) - earlier],
  };
}

/** Sub-millimetre raggedness of a toe, mm: slow and quick, and pulled in between two crescents. */
function raggedToe({ shape, ripples, half }: Course, x: number, side: 0 | 1): number {
  const s = shape.seed + side;
  const crescent = ripples.heightAt(x, side === 0 ? -1 : 1, half) / Math.max(0.02, shape.ripple.heightMm);
  return (
    shape.raggedMm *
    (1.2 * fractalNoise1(x * 0.33, s + 20, 2) +
      0.9 * fractalNoise1(x * 1.3, s + 24, 2) +
      0.64 * (1 - crescent))
  );
}

/** Share of the full half-width on one side, less than 1 near the ends. */
function fullness({ shape, half, lags }: Course, x: number, side: 0 | 1): number {
  const s = shape.seed;
  // Both sides run out at the same point, or half a tip would stand out beyond the other.
  const radius = half * (1.05 + 0.2 * noise1(s + side, 4)) + lags[side];
  const endRadius = half * (1.12 + 0.2 * noise1(s + side, 6));
  return endFullness(x - shape.startMm, radius) * endFullness(shape.endMm - x, endRadius);
}

function toesOf(course: Course, x: number): Toes | null {
  const { shape, half } = course;
  if (x <= shape.startMm || x >= shape.endMm) return null;
  const s = shape.seed;
  const middle = (shape.rightMm + shape.leftMm) / 2;
  const coldStart = 1 + 2.4 * Math.exp(-(x - shape.startMm) / 5);
  const centre = middle + shape.wanderMm * fractalNoise1(x / shape.wanderLengthMm + 0.37, s + 31, 2) * 1.6;
  const swell =
    (1 +
      shape.unevenWidth * 1.7 * fractalNoise1(x / shape.unevenLengthMm, s + 32, 2) +
      0.1 * shape.startLump * Math.exp(-(((x - shape.startMm - half) / half) ** 2))) *
    (shape.restart === null ? 1 : restartSwell(shape.restart, half, x));
  const reach = (side: 0 | 1): number =>
    fullness(course, x, side) * (half * swell + raggedToe(course, x, side) * coldStart);
  return { leftMm: centre - reach(0), rightMm: centre + reach(1) };
}

function crownOf({ shape, half }: Course, x: number): number {
  const s = shape.seed;
  const fromStart = x - shape.startMm;
  const toEnd = shape.endMm - x;
  const lump = 1 + shape.startLump * Math.exp(-(((fromStart - half) / (1.1 * half)) ** 2));
  const ends = endFullness(fromStart, half * 0.9) * (0.35 + 0.65 * smoothstep(0, 2.2 * half, toEnd));
  const swell = 1 - 0.8 * shape.unevenWidth * fractalNoise1(x / shape.unevenLengthMm, s + 32, 2);
  return shape.crownMm * lump * ends * swell * (1 + 0.05 * fractalNoise1(x * 0.21, s + 33, 2));
}

export function createBead(shape: BeadShape): Bead {
  const course = courseOf(shape);
  return {
    shape,
    ripples: course.ripples,
    toesAt: (x) => toesOf(course, x),
    crownAt: (x) => crownOf(course, x),
  };
}
