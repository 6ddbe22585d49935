import { distance, dot, projectOnPolyline, subtract, times, type Point } from "@/lib/geometry";
import { onSide, outwards, type FilletCorner } from "./fillet-corner";
import type { FilletPlan } from "./plan-fillet";
import { valuesAt } from "./shape";

/** Cosine of half the angle between the plates: from a leg to the height of the triangle it belongs to. */
export const halfCosine = ({ angleDeg }: FilletCorner): number => Math.cos((angleDeg * Math.PI) / 360);

/** Least distance from a point to a path. */
export function reach(point: Point, path: readonly Point[]): number {
  return Math.abs(projectOnPolyline(point, path)?.offset ?? NaN);
}

/**
 * Height of the largest triangle with its tip in the corner and equal sides along the plates that lies in the weld: it
 * ends where the face or the nearer toe ends it.
 */
export function inscribed(
  corner: FilletCorner,
  legs: readonly [number, number],
  face: readonly Point[],
): number {
  const between = face
    .slice(1, -1)
    .filter((point) => onSide(corner, 0, point).p >= 0 && onSide(corner, 1, point).p >= 0)
    .map((point) => outwards(corner, point));
  return Math.min(legs[0] * halfCosine(corner), legs[1] * halfCosine(corner), ...between);
}

/** How far the face stands over the line from toe to toe, and how far below it. */
export function chordHeights(
  corner: FilletCorner,
  ring: readonly Point[],
  plan: FilletPlan,
  face: readonly Point[],
) {
  const [a, b] = plan.toes.map((index) => ring[index]!) as [Point, Point];
  const chord = subtract(b, a);
  const square = times({ x: -chord.y, y: chord.x }, 1 / distance(a, b));
  const outside = dot(square, corner.bisector) < 0 ? times(square, -1) : square;
  const height = (point: Point): number => dot(subtract(point, a), outside);
  const heights = face.slice(1, -1).map(height);
  return {
    over: heights.length === 0 ? 0 : Math.max(...heights),
    under: heights.length === 0 ? 0 : -Math.min(...heights),
    at: valuesAt(plan.face.indices.slice(1, -1), (index) => height(ring[index]!)),
  };
}
