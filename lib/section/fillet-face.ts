import { distance, dot, projectOnPolyline, subtract, times } from "@/lib/geometry";
import type { PlanePoint } from "@/lib/measure";
import { onSide, outwards, type FilletCorner } from "./fillet-corner";
import type { FilletPlan } from "./plan-fillet";
import { valuesAt } from "./shape";

/** Cosine of half the angle between the plates: from a leg to the height of the triangle it belongs to. */
export const halfCosine = ({ angleDeg }: FilletCorner<"plane">): number =>
  Math.cos((angleDeg * Math.PI) / 360);

/** Least distance from a point to a path. */
export function reach(point: PlanePoint, path: readonly PlanePoint[]): number {
  return Math.abs(projectOnPolyline(point, path)?.offset ?? NaN);
}

/**
 * Height of the largest triangle with its tip in the corner and equal sides along the plates that lies in the weld: it
 * ends where the face or the nearer toe ends it. Under an undercut the face leaves the corner's angle before its toe:
 * there it ends where it crosses the plate.
 */
export function inscribed(
  corner: FilletCorner<"plane">,
  legs: readonly [number, number],
  face: readonly PlanePoint[],
): number {
  const ends = legs.map((leg) => leg * halfCosine(corner));
  const heights = face.map((point) => ({
    t: outwards(corner, point),
    p: Math.min(onSide(corner, 0, point).p, onSide(corner, 1, point).p),
  }));
  // The toes are on the plates but for rounding, and stand in `ends` already.
  const inner = heights.slice(1, -1).flatMap(({ t, p }) => (p >= 0 ? [t] : []));
  const crossed = heights.flatMap((one, i) => {
    const next = heights[i + 1];
    return next === undefined || one.p * next.p >= 0
      ? []
      : [one.t + (one.p / (one.p - next.p)) * (next.t - one.t)];
  });
  return Math.min(...ends, ...inner, ...crossed);
}

/** How far the face stands over the line from toe to toe, and how far below it. */
export function chordHeights(
  corner: FilletCorner<"plane">,
  ring: readonly PlanePoint[],
  plan: FilletPlan,
  face: readonly PlanePoint[],
) {
  const [a, b] = plan.toes.map((index) => ring[index]!) as [PlanePoint, PlanePoint];
  const chord = subtract(b, a);
  const square = times({ x: -chord.y, y: chord.x }, 1 / distance(a, b));
  const outside = dot(square, corner.bisector) < 0 ? times(square, -1) : square;
  const height = (point: PlanePoint): number => dot(subtract(point, a), outside);
  const heights = face.slice(1, -1).map(height);
  return {
    over: heights.length === 0 ? 0 : Math.max(...heights),
    under: heights.length === 0 ? 0 : -Math.min(...heights),
    at: valuesAt(plan.face.indices.slice(1, -1), (index) => height(ring[index]!)),
  };
}
