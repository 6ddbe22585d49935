import { signedArea } from "@/lib/geometry";
import type { PlanePoint } from "@/lib/measure";

/** The half of the plane on the side of `normal` of a line through `through`. */
export interface HalfPlane {
  readonly through: PlanePoint;
  readonly normal: PlanePoint;
}

/**
 * Area of a simple ring inside all the half-planes: cut by one after the other (Sutherland and Hodgman 1974). A ring that
 * falls into several pieces keeps bridges of no area between them, so the area is exact all the same.
 */
export function clippedArea(ring: readonly PlanePoint[], halves: readonly HalfPlane[]): number {
  return Math.abs(signedArea(halves.reduce(clip, ring)));
}

function clip(ring: readonly PlanePoint[], { through, normal }: HalfPlane): readonly PlanePoint[] {
  const kept: PlanePoint[] = [];
  const inside = ({ x, y }: PlanePoint): number => (x - through.x) * normal.x + (y - through.y) * normal.y;
  let before = ring.at(-1);
  let from = before === undefined ? 0 : inside(before);
  for (const point of ring) {
    const to = inside(point);
    // Strictly on different sides: a point on the line is kept as it is.
    if (before !== undefined && from * to < 0) {
      const share = from / (from - to);
      kept.push({ x: before.x + share * (point.x - before.x), y: before.y + share * (point.y - before.y) });
    }
    if (to >= 0) kept.push(point);
    [before, from] = [point, to];
  }
  return kept;
}
