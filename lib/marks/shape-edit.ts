import { assertNever } from "@/lib/base";
import type { Point } from "@/lib/geometry";
import type { MarkShapeData, PhotoPoint } from "./drawing";

/** The fewest points that still make the shape. */
export const fewestPoints: Readonly<Record<MarkShapeData["kind"], number>> = {
  point: 1,
  line: 2,
  outline: 3,
};

/** Every point of the shape, photo pixels; a spot has one, its middle. */
export function shapePoints(shape: MarkShapeData): readonly PhotoPoint[] {
  return shape.kind === "point" ? [shape.at] : shape.points;
}

/** The shape with other points. A spot takes the first and keeps its radius. */
function withPoints(shape: MarkShapeData, points: readonly PhotoPoint[]): MarkShapeData {
  switch (shape.kind) {
    case "point":
      return { ...shape, at: points[0] ?? shape.at };
    case "line":
    case "outline":
      return { ...shape, points: [...points] };
    default:
      return assertNever(shape);
  }
}

/** Shifted by a vector in photo pixels; each point keeps the grain it was set with, for the shape stays as it was. */
export function moveShapeBy(shape: MarkShapeData, by: Point<"photo">): MarkShapeData {
  return withPoints(
    shape,
    shapePoints(shape).map((p) => ({ ...p, x: p.x + by.x, y: p.y + by.y })),
  );
}

/** One point set anew, with the grain of that moment. An index outside the shape changes nothing. */
export function moveShapePoint(shape: MarkShapeData, index: number, to: PhotoPoint): MarkShapeData {
  const points = shapePoints(shape);
  if (points[index] === undefined) return shape;
  return withPoints(shape, points.with(index, bare(to)));
}

/** A point put in before `index` (equal to the length: appended). A spot takes no second point. */
export function insertShapePoint(shape: MarkShapeData, index: number, at: PhotoPoint): MarkShapeData {
  if (shape.kind === "point" || !Number.isInteger(index) || index < 0 || index > shape.points.length) {
    return shape;
  }
  return withPoints(shape, shape.points.toSpliced(index, 0, bare(at)));
}

/** A point taken out, unless the shape would no longer be one. */
export function removeShapePoint(shape: MarkShapeData, index: number): MarkShapeData {
  const points = shapePoints(shape);
  if (points[index] === undefined || points.length <= fewestPoints[shape.kind]) return shape;
  return withPoints(shape, points.toSpliced(index, 1));
}

/** What a drawing keeps of a point, and nothing else it may carry. */
function bare({ x, y, grainPx }: PhotoPoint): PhotoPoint {
  return grainPx === undefined ? { x, y } : { x, y, grainPx };
}
