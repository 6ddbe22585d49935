import { issue, remembered } from "@/lib/base";
import { crossesItself, projectOnPolyline, type Point } from "@/lib/geometry";
import type { Drawing, Mark, MarkShapeData } from "@/lib/marks";
import { measureArea, measureEqualCircle, measureExtent, measureLength, measureSpot } from "./figures";
import { worstGaugeReading } from "./gauge-quantity";
import { beforeHorizon, mapPoints } from "./plane-map";
import type { Calibrated, Calibration, MeasuredMark, MeasureIssue, Quantity } from "./types";

type Sizes = Pick<MeasuredMark, "lengthMm" | "diameterMm" | "areaMm2" | "alongMm"> & {
  readonly issues: readonly MeasureIssue[];
};

const noSizes: Sizes = { lengthMm: null, diameterMm: null, areaMm2: null, alongMm: null, issues: [] };

/**
 * One mark in mm with its uncertainty, gauge readings first. Never fails as a whole: what the photo cannot give is null
 * and `issues` says why (no-scale, a fault of the scale, beyond-horizon, outline-crosses-itself, no-weld-line).
 *
 * @param drawing The one the mark is on. @param calibration Of that drawing's scale.
 */
export function measureMark(
  { weldLine }: Pick<Drawing, "weldLine">,
  mark: Mark,
  calibration: Calibrated,
): MeasuredMark {
  return measured(mark, weldLine, calibration);
}

/** Remembered: a stroke on a photo with many marks leaves all others as they were. */
const measured = remembered(
  (mark: Mark, weldLine: Drawing["weldLine"], calibration: Calibrated): MeasuredMark => {
    const sizes = calibration.ok
      ? sizesOf(weldLine ?? [], mark.shape, calibration.value)
      : { ...noSizes, issues: calibration.issues };
    const gauge = (quantity: "depth" | "height" | "diameter" | "length"): Quantity | null =>
      worstGaugeReading(mark.gauge, quantity);
    return {
      id: mark.id,
      imperfection: mark.imperfection,
      place: mark.place,
      stretch: mark.stretch,
      alongMm: sizes.alongMm,
      lengthMm: gauge("length") ?? sizes.lengthMm,
      depthMm: gauge("depth"),
      heightMm: gauge("height"),
      diameterMm: gauge("diameter") ?? sizes.diameterMm,
      areaMm2: sizes.areaMm2,
      issues: sizes.issues,
    };
  },
);

/** Every mark of a drawing. */
export function measureDrawing(drawing: Drawing, calibration: Calibrated): readonly MeasuredMark[] {
  return drawing.marks.map((mark) => measureMark(drawing, mark, calibration));
}

function sizesOf(weldLine: readonly Point<"photo">[], shape: MarkShapeData, calibration: Calibration): Sizes {
  const points = shape.kind === "point" ? [shape.at] : shape.points;
  if (!beforeHorizon(calibration, [...points, ...weldLine]))
    return { ...noSizes, issues: [issue("beyond-horizon", ["marks"])] };
  const alongMm = placeAlong(calibration, shape, points, weldLine);
  const issues: MeasureIssue[] = alongMm === null ? [issue("no-weld-line", ["weldLine"])] : [];
  switch (shape.kind) {
    case "point":
      return {
        ...noSizes,
        alongMm,
        issues,
        diameterMm: shape.radius === null ? null : measureSpot(calibration, shape.at, shape.radius),
      };
    case "line":
      return { ...noSizes, alongMm, issues, lengthMm: measureLength(calibration, shape.points) };
    case "outline": {
      const lengthMm = measureExtent(calibration, shape.points);
      if (crossesItself(shape.points))
        return {
          ...noSizes,
          alongMm,
          lengthMm,
          issues: [...issues, issue("outline-crosses-itself", ["marks"])],
        };
      return {
        alongMm,
        issues,
        lengthMm,
        diameterMm: measureEqualCircle(calibration, shape.points),
        areaMm2: measureArea(calibration, shape.points),
      };
    }
  }
}

/** From the first to the last foot of the mark on the weld line, in mm from its start. */
function placeAlong(
  calibration: Calibration,
  shape: MarkShapeData,
  points: readonly Point<"photo">[],
  weldLine: readonly Point<"photo">[],
): readonly [number, number] | null {
  if (weldLine.length < 2) return null;
  const line = mapPoints(calibration.map, weldLine);
  const along = mapPoints(calibration.map, points).map((point) => projectOnPolyline(point, line)?.along ?? 0);
  const reach =
    shape.kind === "point" && shape.radius !== null
      ? measureSpot(calibration, shape.at, shape.radius).value / 2
      : 0;
  return [Math.min(...along) - reach, Math.max(...along) + reach];
}

/** Length of the weld along its marked line; null without one or without scale. */
export function measureWeldLine({ weldLine }: Drawing, calibration: Calibrated): Quantity | null {
  return weldLine === null || !calibration.ok ? null : measureLength(calibration.value, weldLine);
}
