import type { PhotoFacts } from "@/lib/assess";
import { newMark, type Drawing, type MarkShapeData } from "@/lib/marks";
import { defaultMeasureOptions, measureMark } from "@/lib/measure";
import { sizeText } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";

/** Size of a shape still being drawn, measured the way the finished mark will be. */
export function shapeSize(
  drawing: Drawing,
  shape: MarkShapeData,
  photo: PhotoFacts,
  units: UnitPreferences,
): string {
  const draft = newMark("draft", "undercut", shape);
  return sizeText(measureMark(drawing, draft, { ...defaultMeasureOptions, photo }), units);
}
