import { applyHomography, homographyJacobian, type Homography, type Point } from "@/lib/geometry";
import type { Drawing, MarkShapeData, Toes } from "./drawing";

/** The picture that is laid out is a photo of its own from here on. */
type Onto = Homography<"photo", "photo">;

/** How much larger small things come out there: the root of the area's growth, for a circle stays a circle. */
function growth(map: Homography<"photo">, at: Point<"photo">): number {
  const [a, b, c, d] = homographyJacobian(map, at);
  return Math.sqrt(Math.abs(a * d - b * c));
}

function warpShape(shape: MarkShapeData, map: Onto): MarkShapeData {
  const to = (point: Point<"photo">): Point<"photo"> => applyHomography(map, point);
  if (shape.kind !== "point") return { ...shape, points: shape.points.map(to) };
  return {
    ...shape,
    at: to(shape.at),
    radius: shape.radius === null ? null : shape.radius * growth(map, shape.at),
  };
}

/**
 * Marks, toes and weld line as they lie on a picture that was turned or laid flat by `map` (photo pixels to the pixels of
 * that picture), to be shown and not to be stored. The scale is left out: it belongs to the photo as it was taken.
 */
export function warpDrawing(drawing: Drawing, map: Homography<"photo", "view">): Drawing {
  const onto = map as Homography<"photo"> as Onto;
  const warped = (toe: Toes["upper"]): Toes["upper"] =>
    toe.map((point) => ({ ...point, ...applyHomography(onto, { x: point.x, y: point.y }) }));
  const { toes, ...rest } = drawing;
  return {
    ...rest,
    ...(toes === undefined
      ? {}
      : { toes: { ...toes, upper: warped(toes.upper), lower: warped(toes.lower) } }),
    scale: null,
    weldLine: drawing.weldLine && drawing.weldLine.map((point) => applyHomography(onto, point)),
    marks: drawing.marks.map((mark) => ({ ...mark, shape: warpShape(mark.shape, onto) })),
  };
}
