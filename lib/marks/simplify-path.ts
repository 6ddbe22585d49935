import { type AnySpace, distanceToPolyline, type Point } from "@/lib/geometry";

/**
 * A freehand path with only the points that matter: no point left out lies farther than `tolerance` (the path's
 * unit) from the path kept. Both ends stay. Ramer 1972, Douglas and Peucker 1973, with a stack instead of recursion.
 */
export function simplifyPath<S = AnySpace>(
  points: readonly Point<S>[],
  tolerance: number,
): readonly Point<S>[] {
  if (points.length <= 2) return points;
  const keep = new Set([0, points.length - 1]);
  const open: [number, number][] = [[0, points.length - 1]];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [from, to] = span;
    let farthest = -1;
    let distance = tolerance;
    for (let i = from + 1; i < to; i++) {
      const d = distanceToPolyline(points[i]!, [points[from]!, points[to]!]);
      if (d > distance) [farthest, distance] = [i, d];
    }
    if (farthest < 0) continue;
    keep.add(farthest);
    open.push([from, farthest], [farthest, to]);
  }
  return points.filter((_, i) => keep.has(i));
}
