import { assertNever } from "@/lib/base";
import { distance, distanceToPolyline, type Point } from "@/lib/geometry";
import { offsetBy, type MarkShapeData, type SceneShape } from "@/lib/marks";
import type { Drawing } from "@/lib/marks";

/** Even-odd rule; a point on the border may fall on either side. */
function isInside(at: Point<"photo">, corners: readonly Point<"photo">[]): boolean {
  let inside = false;
  corners.forEach((a, i) => {
    const b = corners[(i + 1) % corners.length]!;
    if (a.y > at.y !== b.y > at.y && at.x < a.x + ((at.y - a.y) / (b.y - a.y)) * (b.x - a.x))
      inside = !inside;
  });
  return inside;
}

/** How far a point is from the drawn line of a shape, photo pixels; inside a spot or an outline counts as on it. */
export function shapeDistance(shape: MarkShapeData, at: Point<"photo">): number {
  switch (shape.kind) {
    case "point":
      return Math.max(0, distance(shape.at, at) - (shape.radius ?? 0));
    case "line":
      return distanceToPolyline(at, shape.points);
    case "outline": {
      if (isInside(at, shape.points)) return 0;
      const [first] = shape.points;
      const closed = first ? [...shape.points, first] : shape.points;
      return distanceToPolyline(at, closed);
    }
    default:
      return assertNever(shape);
  }
}

/** Rough size, to let a pore inside an outline be picked before the outline. */
function shapeSpan(shape: MarkShapeData): number {
  if (shape.kind === "point") return shape.radius ?? 0;
  const xs = shape.points.map((p) => p.x);
  const ys = shape.points.map((p) => p.y);
  return Math.max(...xs) - Math.min(...xs) + Math.max(...ys) - Math.min(...ys);
}

/**
 * The mark under a point: by its number first, then by the nearest line, then the smaller one. `unitPx`: photo
 * pixels per CSS pixel; `reach`: CSS pixels.
 */
export function markAt(
  drawing: Drawing,
  shapes: readonly SceneShape[],
  at: Point<"photo">,
  reach: number,
  unitPx: number,
): string | null {
  const byNumber = shapes
    .filter((shape) => shape.kind === "badge")
    .map((badge) => ({ id: badge.markId, away: distance(offsetBy(badge.at, badge.offset, unitPx), at) }))
    .filter(({ away }) => away <= Math.min(reach, 16) * unitPx)
    .sort((a, b) => a.away - b.away)[0];
  if (byNumber) return byNumber.id;
  const byLine = drawing.marks
    .map(({ id, shape }) => ({ id, away: shapeDistance(shape, at), span: shapeSpan(shape) }))
    .filter(({ away }) => away <= reach * unitPx)
    .sort((a, b) => a.away - b.away || a.span - b.span)[0];
  return byLine?.id ?? null;
}
