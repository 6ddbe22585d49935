import type { AnySpace, Point } from "./point";

export function add<S = AnySpace>(a: Point<S>, b: Point<S>): Point<S> {
  return { x: a.x + b.x, y: a.y + b.y };
}

/** From `b` to `a`. */
export function subtract<S = AnySpace>(a: Point<S>, b: Point<S>): Point<S> {
  return { x: a.x - b.x, y: a.y - b.y };
}

export function times<S = AnySpace>(a: Point<S>, factor: number): Point<S> {
  return { x: a.x * factor, y: a.y * factor };
}

export function dot<S>(a: Point<S>, b: Point<S>): number {
  return a.x * b.x + a.y * b.y;
}

/** z of the cross product: twice the signed area of the triangle (0, a, b). */
export function cross<S>(a: Point<S>, b: Point<S>): number {
  return a.x * b.y - a.y * b.x;
}

export function length<S>(a: Point<S>): number {
  return Math.hypot(a.x, a.y);
}

export function distance<S>(a: Point<S>, b: Point<S>): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}

export function midpoint<S = AnySpace>(a: Point<S>, b: Point<S>): Point<S> {
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

/** Mean of the points; NaN for none. */
export function centroidOf<S = AnySpace>(points: readonly Point<S>[]): Point<S> {
  return times(
    points.reduce((sum, point) => add(sum, point), { x: 0, y: 0 }),
    1 / points.length,
  );
}

/** Angle at `vertex` between the rays to `a` and `b`, in degrees, 0 to 180. NaN when a ray has no length. */
export function angleDeg<S>(a: Point<S>, vertex: Point<S>, b: Point<S>): number {
  const u = subtract(a, vertex);
  const v = subtract(b, vertex);
  if (length(u) === 0 || length(v) === 0) return NaN;
  return (Math.atan2(Math.abs(cross(u, v)), dot(u, v)) * 180) / Math.PI;
}
