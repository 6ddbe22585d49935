import { newMark, type Drawing, type MarkShapeData } from "@/lib/marks";
import { measureMark, type Calibrated } from "@/lib/measure";
import { sizeText } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";

/** Size of a shape still being drawn, measured the way the finished mark will be. */
export function shapeSize(
  drawing: Drawing,
  shape: MarkShapeData,
  /** Of the photo's scale; null while there is none yet. */
  calibration: Calibrated | null,
  units: UnitPreferences,
): string {
  if (calibration === null) return "";
  const draft = newMark("draft", "undercut", shape);
  return sizeText(measureMark(drawing, draft, calibration), units);
}
