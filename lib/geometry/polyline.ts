import type { AnySpace, Point } from "./point";
import { add, cross, distance, subtract, times } from "./vector";

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
  let nearest = Infinity;
  let at = { index: 0, share: 0, before: 0, reach: 0 };
  let before = 0;
  // In plain numbers: this runs for each point of each mark, along each segment of the weld line.
  for (let i = 1; i < polyline.length; i++) {
    const a = polyline[i - 1]!;
    const [dx, dy] = [polyline[i]!.x - a.x, polyline[i]!.y - a.y];
    const [px, py] = [point.x - a.x, point.y - a.y];
    const size = dx * dx + dy * dy;
    const share = size === 0 ? 0 : Math.min(1, Math.max(0, (px * dx + py * dy) / size));
    const [awayX, awayY] = [px - share * dx, py - share * dy];
    const square = awayX * awayX + awayY * awayY;
    const reach = Math.sqrt(size);
    if (at.index === 0 || square < nearest) {
      nearest = square;
      at = { index: i, share, before, reach };
    }
    before += reach;
  }
  if (at.index === 0) return null;
  const a = polyline[at.index - 1]!;
  const span = subtract(polyline[at.index]!, a);
  const foot = add(a, times(span, at.share));
  const side = cross(span, subtract(point, foot)) < 0 ? -1 : 1;
  return { along: at.before + at.share * at.reach, offset: side * distance(point, foot), foot };
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
