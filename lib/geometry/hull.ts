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
  return diameterOf(points).value;
}

/**
 * The same with the two points: once around the hull, with the point that lies farthest from each side (rotating callipers,
 * Shamos 1978). The one after it is looked at too, so that rounding on a side's parallel hides no diagonal.
 */
export function diameterOf<S>(points: readonly Point<S>[]): {
  readonly value: number;
  readonly ends: readonly [Point<S> | null, Point<S> | null];
} {
  const hull = convexHull(points);
  const n = hull.length;
  let value = 0;
  let ends: [Point<S> | null, Point<S> | null] = [hull[0] ?? null, hull[1] ?? null];
  const look = (a: Point<S>, b: Point<S>): void => {
    const reach = distance(a, b);
    if (reach > value) [value, ends] = [reach, [a, b]];
  };
  let far = n > 1 ? 1 : 0;
  for (let i = 0; i < n; i++) {
    const [a, b] = [hull[i]!, hull[(i + 1) % n]!];
    const side = subtract(b, a);
    for (let steps = 0; steps < n; steps++) {
      if (!(cross(side, subtract(hull[(far + 1) % n]!, hull[far]!)) > 0)) break;
      far = (far + 1) % n;
    }
    for (const c of [hull[far % n]!, hull[(far + 1) % n]!]) {
      look(a, c);
      look(b, c);
    }
  }
  return { value, ends };
}
