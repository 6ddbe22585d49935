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
  const guides = [
    ...(drawing.weldLine === null ? [] : weldLineShapes(drawing.weldLine)),
    ...(drawing.toes === undefined ? [] : toeShapes(drawing.toes)),
    ...(drawing.scale === null
      ? []
      : scaleShapes(drawing.scale, options.scaleLabel ?? scaleWords(drawing.scale))),
  ];
  const tags = drawing.marks.flatMap((mark, i) =>
    markTags(mark, i + 1, options.labels(mark, i + 1), textSide(mark, options.widthPx)),
  );
  return [...guides, ...drawing.marks.map(markBody), ...tags];
}
