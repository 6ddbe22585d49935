import { studyFigures } from "@/lib/gauge";
import type { StudyRecord } from "@/lib/jobs";

/** A study with what came of it. */
export function studyJson({ study, ...rest }: StudyRecord) {
  const { lines, components, categories, reading } = studyFigures(study);
  const { pooled, gaugeDegrees } = components;
  return { ...rest, study, figures: { lines, pooled, gaugeDegrees, categories, reading } };
}
