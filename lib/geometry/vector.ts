import type { Point } from "./point";

export function add(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y };
}

/** From `b` to `a`. */
export function subtract(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

export function times(a: Point, factor: number): Point {
  return { x: a.x * factor, y: a.y * factor };
}

export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

/** z of the cross product: twice the signed area of the triangle (0, a, b). */
export function cross(a: Point, b: Point): number {
  return a.x * b.y - a.y * b.x;
}

export function length(a: Point): number {
  return Math.hypot(a.x, a.y);
}

export function distance(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

export function midpoint(a: Point, b: Point): Point {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** Mean of the points; NaN for none. */
export function centroidOf(points: readonly Point[]): Point {
  return times(
    points.reduce((sum, point) => add(sum, point), { x: 0, y: 0 }),
    1 / points.length,
  );
}

/** Angle at `vertex` between the rays to `a` and `b`, in degrees, 0 to 180. NaN when a ray has no length. */
export function angleDeg(a: Point, vertex: Point, b: Point): number {
  const u = subtract(a, vertex);
  const v = subtract(b, vertex);
  if (length(u) === 0 || length(v) === 0) return NaN;
  return (Math.atan2(Math.abs(cross(u, v)), dot(u, v)) * 180) / Math.PI;
}
