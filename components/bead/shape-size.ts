import type { PhotoFacts } from "@/lib/assess";
import type { Drawing, Mark, MarkShapeData } from "@/lib/marks";
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
  const draft: Mark = {
    id: "draft",
    imperfection: "undercut",
    shape,
    place: null,
    stretch: null,
    patterns: [],
    gauge: [],
    note: "",
  };
  return sizeText(measureMark(drawing, draft, { ...defaultMeasureOptions, photo }), units);
}
