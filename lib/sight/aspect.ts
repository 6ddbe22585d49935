import { cross, type Point } from "@/lib/geometry";

/**
 * First side over second of the rectangle that is seen as this quadrangle by a camera that looks at `centre`, all in pixels.
 * Corners go round. (After Zhang and He 2007: the middle of both diagonals is one place, which gives the corners' depths.)
 */
export function aspectOf(
  [a, b, c, d]: readonly [Point<"frame">, Point<"frame">, Point<"frame">, Point<"frame">],
  centre: Point<"frame">,
  focal: number,
): number {
  const ray = ({ x, y }: Point<"frame">): Vec3 => [(x - centre.x) / focal, (y - centre.y) / focal, 1];
  const [ma, mb, mc, md] = [ray(a), ray(b), ray(c), ray(d)];
  const kb = dot3(cross3(ma, mc), md) / dot3(cross3(mb, mc), md);
  const kd = dot3(cross3(ma, mc), mb) / dot3(cross3(md, mc), mb);
  if (!Number.isFinite(kb) || !Number.isFinite(kd)) return NaN;
  const side = (m: Vec3, k: number): number =>
    Math.hypot(k * m[0] - ma[0], k * m[1] - ma[1], k * m[2] - ma[2]);
  return side(mb, kb) / side(md, kd);
}

type Vec3 = readonly [number, number, number];
const dot3 = (p: Vec3, q: Vec3): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const cross3 = (p: Vec3, q: Vec3): Vec3 => [
  p[1] * q[2] - p[2] * q[1],
  p[2] * q[0] - p[0] * q[2],
  cross({ x: p[0], y: p[1] }, { x: q[0], y: q[1] }),
];
