import { distance, length, pointAlong, polylineLength, subtract, times, type Point } from "@/lib/geometry";

/** The unit vector from a to b; (1, 0) when they coincide, so that text beside it still has a side. */
export function directionFrom(a: Point<"photo">, b: Point<"photo">): Point<"photo"> {
  const span = subtract(b, a);
  const reach = length(span);
  return reach > 0 ? times(span, 1 / reach) : { x: 1, y: 0 };
}

/** Half way along an open path of at least one point: where it is, and which way the path runs there. */
export function pathMiddle(points: readonly Point<"photo">[]): {
  readonly at: Point<"photo">;
  readonly along: Point<"photo">;
} {
  const half = polylineLength(points) / 2;
  const at = pointAlong(points, half) ?? { x: 0, y: 0 };
  let reached = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    reached += distance(a, b);
    if (reached >= half && distance(a, b) > 0) return { at, along: directionFrom(a, b) };
  }
  return { at, along: { x: 1, y: 0 } };
}
