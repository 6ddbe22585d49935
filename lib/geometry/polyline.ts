import type { AnySpace, Point } from "./point";
import { add, distance, dot, subtract, times } from "./vector";

/** Sum of the segments; 0 for fewer than two points. */
export function polylineLength<S>(points: readonly Point<S>[]): number {
  let sum = 0;
  for (let i = 1; i < points.length; i++) sum += distance(points[i - 1]!, points[i]!);
  return sum;
}

export interface Projection<S = AnySpace> {
  /** Length along the polyline from its first point to the foot. */
  readonly along: number;
  /** Distance from the point to the foot; positive on the right of the direction of travel when y points down. */
  readonly offset: number;
  readonly foot: Point<S>;
}

/**
 * The nearest point of a polyline. The first and last segment are taken as long as they are: a point beyond an end
 * projects on the end. Of two equally near feet the earlier one. Null for fewer than two points.
 */
export function projectOnPolyline<S = AnySpace>(
  point: Point<S>,
  polyline: readonly Point<S>[],
): Projection<S> | null {
  let best: Projection<S> | null = null;
  let before = 0;
  for (let i = 1; i < polyline.length; i++) {
    const a = polyline[i - 1]!;
    const span = subtract(polyline[i]!, a);
    const size = dot(span, span);
    const share = size === 0 ? 0 : Math.min(1, Math.max(0, dot(subtract(point, a), span) / size));
    const foot = add(a, times(span, share));
    const away = subtract(point, foot);
    const side = span.x * away.y - span.y * away.x < 0 ? -1 : 1;
    const offset = side * distance(point, foot);
    const reach = Math.sqrt(size);
    if (best === null || Math.abs(offset) < Math.abs(best.offset))
      best = { along: before + share * reach, offset, foot };
    before += reach;
  }
  return best;
}

/** From a point to the nearest point of a polyline; Infinity for fewer than two points, which are no line to be near. */
export const distanceToPolyline = (point: Point, polyline: readonly Point[]): number =>
  Math.abs(projectOnPolyline(point, polyline)?.offset ?? Infinity);

/** The point a given length along, held to the ends. Null for no points. */
export function pointAlong<S = AnySpace>(polyline: readonly Point<S>[], along: number): Point<S> | null {
  let rest = Math.max(0, along);
  for (let i = 1; i < polyline.length; i++) {
    const a = polyline[i - 1]!;
    const b = polyline[i]!;
    const reach = distance(a, b);
    if (rest <= reach && reach > 0) return add(a, times(subtract(b, a), rest / reach));
    rest -= reach;
  }
  return polyline.at(-1) ?? null;
}
