import { measureCase, MeasureCaseSchema, type MeasureReport } from "@/lib/measure";
import type { CaseAnswer } from "./case-answer";
import { readCase } from "./read-case";

/** Everything measurable of one drawing. Without a scale it is measured too: its sizes are null. */
export function answerMeasure(json: unknown): CaseAnswer<MeasureReport> {
  const read = readCase(MeasureCaseSchema, json);
  return read.ok ? { ok: true, value: measureCase(read.value) } : read;
}
