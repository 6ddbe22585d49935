import type { Drawing, Mark } from "./drawing";
import { pathMiddle } from "./path-middle";
import { scaleShapes, scaleWords, weldLineShapes } from "./scene-guides";
import { markBody, markTags } from "./scene-mark";
import type { SceneShape } from "./scene-types";
import { toeShapes } from "./scene-toes";
import { shapePoints } from "./shape-edit";

export interface SceneOptions {
  /** Words beside a mark's number (1..n); empty for none. Sizes are another room's business. */
  readonly labels: (mark: Mark, number: number) => string;
  /** Words at the scale. Left out: the stated length in millimetres. */
  readonly scaleLabel?: string | undefined;
  /** Photo width: words of marks in its right third stand on the left, so that they stay in the picture. */
  readonly widthPx?: number | undefined;
  /** One mark alone, with its own number: what is worked out at every step of a drag. Left out: everything. */
  readonly only?: string | undefined;
}

function textSide(mark: Mark, widthPx: number | undefined): "left" | "right" {
  const points = shapePoints(mark.shape);
  const x = points.length > 1 ? pathMiddle(points).at.x : (points[0]?.x ?? 0);
  return widthPx !== undefined && x > (widthPx * 2) / 3 ? "left" : "right";
}

/**
 * The drawing as plain shapes in painting order: guides, bodies, then badges and text on top of every line. Marks
 * are numbered 1..n in the drawing's order. Screen and sheet paint the same list.
 */
export function scene(drawing: Drawing, options: SceneOptions): readonly SceneShape[] {
  const guides = options.only === undefined ? guidesOf(drawing, options) : [];
  const shown = drawing.marks
    .map((mark, i) => ({ mark, number: i + 1 }))
    .filter(({ mark }) => options.only === undefined || mark.id === options.only);
  const tags = shown.flatMap(({ mark, number }) =>
    markTags(mark, number, options.labels(mark, number), textSide(mark, options.widthPx)),
  );
  return [...guides, ...shown.map(({ mark }) => markBody(mark)), ...tags];
}

function guidesOf(drawing: Drawing, options: SceneOptions): readonly SceneShape[] {
  return [
    ...(drawing.weldLine === null ? [] : weldLineShapes(drawing.weldLine)),
    ...(drawing.toes === undefined ? [] : toeShapes(drawing.toes)),
    ...(drawing.scale === null
      ? []
      : scaleShapes(drawing.scale, options.scaleLabel ?? scaleWords(drawing.scale))),
  ];
}
