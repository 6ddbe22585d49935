import type { Point } from "@/lib/geometry";
import { cornersOf, smoothPath } from "./smooth-path";

/** A stretch of the outline: places in its list of points, in order, and which of them are corners. Both ends are. */
export interface Arc {
  readonly indices: readonly number[];
  readonly corners: readonly boolean[];
}

/** The two ways round a ring of `count` points from one to another. */
export function waysRound(
  count: number,
  from: number,
  to: number,
): readonly [readonly number[], readonly number[]] {
  const walk = (step: 1 | -1): readonly number[] => {
    const steps = ((((to - from) * step) % count) + count) % count;
    return Array.from({ length: steps + 1 }, (_, i) => (((from + step * i) % count) + count) % count);
  };
  return [walk(1), walk(-1)];
}

/** An arc with its corners decided, once, on the points as picked: an error of a pick must not make or break a corner. */
export function arcOf<S>(ring: readonly Point<S>[], indices: readonly number[]): Arc {
  return { indices, corners: cornersOf(picksOf(ring, indices)) };
}

export function picksOf<S>(ring: readonly Point<S>[], indices: readonly number[]): readonly Point<S>[] {
  return indices.map((index) => ring[index]!);
}

/** The arc as a smooth path through its points. */
export function curveOf<S>(ring: readonly Point<S>[], arc: Arc): readonly Point<S>[] {
  return smoothPath(picksOf(ring, arc.indices), arc.corners);
}

/** The place in `list` where `score` is highest; the first of several. -1 for none. */
export function bestIndex<T>(list: readonly T[], score: (item: T) => number): number {
  let best = -1;
  let highest = -Infinity;
  list.forEach((item, i) => {
    const value = score(item);
    if (value > highest) {
      highest = value;
      best = i;
    }
  });
  return best;
}

/**
 * How far out along an edge a point lies, a way off the edge counting against it: the outline's highest is its toe. Above
 * the metal every millimetre counts whole; below it a third, because the toe of an undercut lies below, at the bottom of
 * its groove, and the boundary of fusion leans in under a toe and seldom out. Own choice.
 */
export const toeScore = (along: number, above: number): number => along - (above > 0 ? above : -above / 3);

/** Of two ways round the one that stands farther out on the whole, its ends left aside where there is more. */
export function faceFirst(
  ways: readonly [readonly number[], readonly number[]],
  outwards: (index: number) => number,
): readonly [face: readonly number[], behind: readonly number[]] {
  const mean = (indices: readonly number[]): number => {
    const inner = indices.length > 2 ? indices.slice(1, -1) : indices;
    return inner.reduce((sum, index) => sum + outwards(index), 0) / inner.length;
  };
  return mean(ways[0]) >= mean(ways[1]) ? ways : [ways[1], ways[0]];
}
