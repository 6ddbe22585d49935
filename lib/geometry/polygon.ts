import type { AnySpace, Point } from "./point";
import { cross, subtract } from "./vector";

/** Signed by the turn from x to y (shoelace formula); the ring closes itself. 0 for fewer than three points. */
export function signedArea<S>(ring: readonly Point<S>[]): number {
  const origin = ring[0];
  if (origin === undefined) return 0;
  // From the first corner, so that a small outline far from the origin loses no digits.
  let twice = 0;
  for (let i = 2; i < ring.length; i++)
    twice += cross(subtract(ring[i - 1]!, origin), subtract(ring[i]!, origin));
  return twice / 2;
}

export function polygonArea<S>(ring: readonly Point<S>[]): number {
  return Math.abs(signedArea(ring));
}

/**
 * Whether any two sides that are not neighbours touch or cross. Sides are taken from left to right, and each is compared
 * with those only that it overlaps both ways: on an outline around something that is a few.
 */
export function crossesItself<S>(ring: readonly Point<S>[]): boolean {
  const n = ring.length;
  const sides = ring
    .map((a, index) => {
      const b = ring[(index + 1) % n]!;
      const [left, right] = a.x < b.x ? [a.x, b.x] : [b.x, a.x];
      const [low, high] = a.y < b.y ? [a.y, b.y] : [b.y, a.y];
      return { index, a, b, left, right, low, high };
    })
    .sort((p, q) => p.left - q.left);
  let open: typeof sides = [];
  for (const side of sides) {
    open = open.filter(({ right }) => right >= side.left);
    for (const other of open) {
      const apart = Math.abs(side.index - other.index);
      if (other.low > side.high || other.high < side.low || apart === 1 || apart === n - 1) continue;
      if (segmentsTouch(side.a, side.b, other.a, other.b)) return true;
    }
    open.push(side);
  }
  return false;
}

/** Closed segments: sharing an end counts as touching. */
export function segmentsTouch<S>(a: Point<S>, b: Point<S>, c: Point<S>, d: Point<S>): boolean {
  const turn = (p: Point<S>, q: Point<S>, r: Point<S>): number =>
    Math.sign(cross(subtract(q, p), subtract(r, p)));
  const onSegment = (p: Point<S>, q: Point<S>, r: Point<S>): boolean =>
    Math.min(p.x, q.x) <= r.x &&
    r.x <= Math.max(p.x, q.x) &&
    Math.min(p.y, q.y) <= r.y &&
    r.y <= Math.max(p.y, q.y);
  const abc = turn(a, b, c);
  const abd = turn(a, b, d);
  const cda = turn(c, d, a);
  const cdb = turn(c, d, b);
  if (abc !== abd && cda !== cdb) return true;
  return (
    (abc === 0 && onSegment(a, b, c)) ||
    (abd === 0 && onSegment(a, b, d)) ||
    (cda === 0 && onSegment(c, d, a)) ||
    (cdb === 0 && onSegment(c, d, b))
  );
}

/** Where two infinite lines meet; null when they are parallel. */
export function linesMeet<S = AnySpace>(a: Point<S>, b: Point<S>, c: Point<S>, d: Point<S>): Point<S> | null {
  const u = subtract(b, a);
  const v = subtract(d, c);
  const turn = cross(u, v);
  if (Math.abs(turn) <= 1e-12 * Math.hypot(u.x, u.y) * Math.hypot(v.x, v.y)) return null;
  const share = cross(subtract(c, a), v) / turn;
  return { x: a.x + share * u.x, y: a.y + share * u.y };
}
