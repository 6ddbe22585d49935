import { add, dot, signedArea, subtract, times, type Point } from "@/lib/geometry";

/** The half of the plane on the side of `normal` of a line through `through`. */
export interface HalfPlane {
  readonly through: Point;
  readonly normal: Point;
}

/**
 * Area of a simple ring inside all the half-planes: cut by one after the other (Sutherland and Hodgman 1974). A ring that
 * falls into several pieces keeps bridges of no area between them, so the area is exact all the same.
 */
export function clippedArea(ring: readonly Point[], halves: readonly HalfPlane[]): number {
  return Math.abs(signedArea(halves.reduce(clip, ring)));
}

function clip(ring: readonly Point[], { through, normal }: HalfPlane): readonly Point[] {
  const inside = (point: Point): number => dot(subtract(point, through), normal);
  return ring.flatMap((point, i) => {
    const next = ring[(i + 1) % ring.length]!;
    const [from, to] = [inside(point), inside(next)];
    const kept = from >= 0 ? [point] : [];
    // Strictly on different sides: a point on the line is kept as it is.
    return from * to < 0 ? [...kept, add(point, times(subtract(next, point), from / (from - to)))] : kept;
  });
}
