import { measureCase, MeasureCaseSchema, type MeasureReport } from "@/lib/measure";
import { countPoints, MOST_POINTS } from "@/lib/marks";
import { lineAt, refused, type CaseAnswer } from "./case-answer";
import { readCase } from "./read-case";

/** Everything measurable of one drawing. Without a scale it is measured too: its sizes are null. */
export function answerMeasure(json: unknown): CaseAnswer<MeasureReport> {
  const read = readCase(MeasureCaseSchema, json);
  if (!read.ok) return read;
  const points = countPoints(read.value.drawing);
  return points > MOST_POINTS
    ? refused([lineAt(["drawing"], `${points} points; at most ${MOST_POINTS} are measured in one case`)])
    : { ok: true, value: measureCase(read.value) };
}
