import { diameterOf } from "./hull";
import type { AnySpace, Point } from "./point";
import { signedArea } from "./polygon";
import { cross, distance, subtract } from "./vector";

/** A figure of many points that also says, without going through all of them again, what it were if one lay elsewhere. */
export interface OneMoved<S = AnySpace> {
  readonly value: number;
  readonly at: (index: number, to: Point<S>) => number;
}

/** Any figure, worked out as a whole each time: for few points. */
export function wholeAgain<S>(
  points: readonly Point<S>[],
  figure: (points: readonly Point<S>[]) => number,
): OneMoved<S> {
  return { value: figure(points), at: (index, to) => figure(points.with(index, to)) };
}

/** Length of a polyline: only the two segments at the point change. */
export function polylineMoved<S>(points: readonly Point<S>[]): OneMoved<S> {
  const reaches = points.slice(1).map((point, i) => distance(points[i]!, point));
  const value = reaches.reduce((sum, reach) => sum + reach, 0);
  return {
    value,
    at: (index, to) => {
      const before = index > 0 ? distance(points[index - 1]!, to) - reaches[index - 1]! : 0;
      const after = index + 1 < points.length ? distance(to, points[index + 1]!) - reaches[index]! : 0;
      return value + before + after;
    },
  };
}

/** Area of a ring: the shoelace formula is linear in each point. */
export function areaMoved<S>(ring: readonly Point<S>[]): OneMoved<S> {
  const n = ring.length;
  const signed = signedArea(ring);
  return {
    value: Math.abs(signed),
    at: (index, to) => {
      if (n < 3) return 0;
      const chord = subtract(ring[(index + 1) % n]!, ring[(index + n - 1) % n]!);
      return Math.abs(signed + cross(subtract(to, ring[index]!), chord) / 2);
    },
  };
}

/** Greatest extent: that of the others, or from the moved point to the farthest of them. */
export function extentMoved<S>(points: readonly Point<S>[]): OneMoved<S> {
  const all = diameterOf(points);
  const without = new Map<number, number>();
  const ofOthers = (index: number): number => {
    if (points[index] !== all.ends[0] && points[index] !== all.ends[1]) return all.value;
    const known = without.get(index) ?? diameterOf(points.toSpliced(index, 1)).value;
    without.set(index, known);
    return known;
  };
  return {
    value: all.value,
    at: (index, { x, y }) => {
      let square = ofOthers(index) ** 2;
      for (let i = 0; i < points.length; i++) {
        const dx = points[i]!.x - x;
        const dy = points[i]!.y - y;
        if (i !== index && dx * dx + dy * dy > square) square = dx * dx + dy * dy;
      }
      return Math.sqrt(square);
    },
  };
}
