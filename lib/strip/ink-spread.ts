import {
  applyHomography,
  distance,
  fitHomography,
  subtract,
  add,
  type Homography,
  type Point,
} from "@/lib/geometry";
import type { StripPoint } from "./strip-layout";

type StripMap = Homography<"strip", "photo">;

export interface CornerOnPage {
  /** Photo pixels. */
  readonly seen: Point<"photo">;
  /** On the strip, mm. */
  readonly page: StripPoint;
  /** From the middle of its marker to this corner, each coordinate 1 or -1. */
  readonly out: StripPoint;
}

export interface Spread {
  /** How much farther out every edge of a dark square is seen than it was drawn, mm; negative: nearer in. */
  readonly mm: number;
  /** The corners as they would be seen without it, photo pixels. */
  readonly corners: readonly Point<"photo">[];
  /** Root mean square distance, in pixels per degree of freedom, from where one plane puts them. */
  readonly misfitPx: number;
}

/**
 * Ink creeps into paper, bright paper bleeds over ink, and a phone's tone curve moves the half-way level: dark squares
 * come out a little larger or smaller, by the same amount on every edge. Two markers a known way apart tell that from
 * scale: their inner edges draw together where the outer ones draw apart. The spread is the one that leaves the least
 * misfit to one plane. Null when the corners fix no plane.
 */
export function takeOutSpread(corners: readonly CornerOnPage[]): Spread | null {
  const square = (mm: number): number => {
    const map = mapWith(corners, mm);
    return map === null ? NaN : squares(corners, map, mm);
  };
  // The misfit's square is a parabola in the spread to far better than needed; two steps leave nothing.
  let mm = 0;
  for (let step = 0.2, i = 0; i < 3; i++, step /= 4) {
    const [low, here, high] = [square(mm - step), square(mm), square(mm + step)];
    const bend = low + high - 2 * here;
    if (!(bend > 0)) return null;
    mm += (step * (low - high)) / (2 * bend);
  }
  const map = mapWith(corners, mm);
  if (map === null) return null;
  const shift = ({ page, out }: CornerOnPage): Point<"photo"> =>
    subtract(applyHomography(map, page), applyHomography(map, spread(page, out, mm)));
  return {
    mm,
    corners: corners.map((corner) => add(corner.seen, shift(corner))),
    // Eight numbers are spent on the plane and one on the spread.
    misfitPx: Math.sqrt(squares(corners, map, mm) / (2 * corners.length - 9)),
  };
}

const spread = (page: StripPoint, out: StripPoint, mm: number): StripPoint => ({
  x: page.x + mm * out.x,
  y: page.y + mm * out.y,
});

function mapWith(corners: readonly CornerOnPage[], mm: number): StripMap | null {
  return fitHomography(
    corners.map(({ page, out }) => spread(page, out, mm)),
    corners.map(({ seen }) => seen),
  );
}

function squares(corners: readonly CornerOnPage[], map: StripMap, mm: number): number {
  return corners.reduce(
    (sum, { seen, page, out }) => sum + distance(applyHomography(map, spread(page, out, mm)), seen) ** 2,
    0,
  );
}
