import type { AnySpace, Point } from "./point";
import { cross, distance, subtract } from "./vector";

/** Convex hull, counter-clockwise in x-right, y-up terms, without repeated points (Andrew's monotone chain, 1979). */
export function convexHull<S = AnySpace>(points: readonly Point<S>[]): readonly Point<S>[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  if (sorted.length < 3) return sorted;
  const half = (list: readonly Point<S>[]): Point<S>[] => {
    const chain: Point<S>[] = [];
    for (const point of list) {
      while (
        chain.length >= 2 &&
        cross(subtract(chain.at(-1)!, chain.at(-2)!), subtract(point, chain.at(-2)!)) <= 0
      )
        chain.pop();
      chain.push(point);
    }
    chain.pop();
    return chain;
  };
  const lower = half(sorted);
  const upper = half(sorted.reverse());
  return [...lower, ...upper];
}

/** Greatest distance between any two of the points. 0 for fewer than two. */
export function greatestExtent<S>(points: readonly Point<S>[]): number {
  const hull = convexHull(points);
  let greatest = 0;
  for (let i = 0; i < hull.length; i++)
    for (let j = i + 1; j < hull.length; j++) greatest = Math.max(greatest, distance(hull[i]!, hull[j]!));
  return greatest;
}
