import { FULL_STEP, rubricSteps, type RubricLine, type RubricMarks } from "./rubric";

/**
 * One press on a line's number: a line that nobody marked is there, each further press takes a quarter off, and after
 * "not there" it is open again. A line left out is there at the next press.
 */
export function pressLine(lines: readonly RubricLine[], marks: RubricMarks, at: number): RubricMarks {
  const line = lines[at];
  if (!line) return marks;
  const { [line.id]: before, ...others } = marks;
  if (before === 0) return others;
  const lower = typeof before === "number" ? rubricSteps.find((step) => step === before - 1) : undefined;
  return { ...others, [line.id]: lower ?? FULL_STEP };
}

/** Every line that nobody marked is there; what was marked stays. */
export function restThere(lines: readonly RubricLine[], marks: RubricMarks): RubricMarks {
  const open = lines.filter(({ id }) => !Object.hasOwn(marks, id));
  return { ...marks, ...Object.fromEntries(open.map(({ id }) => [id, FULL_STEP])) };
}
