import { assertNever } from "@/lib/base";
import type { MarkShapeData } from "@/lib/marks";

/** The picture an area lies on; pixels of the upright original. */
export interface Frame {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Shortest text that reads back as the same number; JSON and SVG 1.1 know no difference between 0 and -0. */
const number = (x: number): string => String(x + 0);
const pairs = (points: readonly { readonly x: number; readonly y: number }[]): string =>
  points.map(({ x, y }) => `${number(x)},${number(y)}`).join(" ");

/**
 * A mark's shape as the value of an SvgSelector: one shape element, no style, in photo pixels (the view box says so).
 * A spot without a size is a path of one point, because a circle needs a radius.
 */
export function shapeToSvg(shape: MarkShapeData, { widthPx, heightPx }: Frame): string {
  const view = `viewBox="0 0 ${number(widthPx)} ${number(heightPx)}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${view}>${element(shape)}</svg>`;
}

function element(shape: MarkShapeData): string {
  switch (shape.kind) {
    case "point": {
      const [x, y] = [number(shape.at.x), number(shape.at.y)];
      return shape.radius === null
        ? `<path d="M${x},${y}h0"/>`
        : `<circle cx="${x}" cy="${y}" r="${number(shape.radius)}"/>`;
    }
    case "line":
      return `<polyline points="${pairs(shape.points)}"/>`;
    case "outline":
      return `<polygon points="${pairs(shape.points)}"/>`;
    default:
      return assertNever(shape);
  }
}
