import type { Drawing } from "./drawing";
import { scalePoints } from "./scale-points";

/**
 * More points than this on all photos of a bead were drawn by no hand. Measuring so many takes half a second at worst, and
 * others wait meanwhile.
 */
export const MOST_POINTS = 20_000;

/** All points of a drawing: of its marks, its weld line and its scale. */
export function countPoints({ marks, weldLine, scale }: Drawing): number {
  const ofMarks = marks.reduce(
    (sum, { shape }) => sum + (shape.kind === "point" ? 1 : shape.points.length),
    0,
  );
  return ofMarks + (weldLine?.length ?? 0) + (scale === null ? 0 : scalePoints(scale).length);
}
