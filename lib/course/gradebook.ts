import type { RubricLine, RubricMarks, RubricScore } from "./rubric";

export const handInStates = ["not-handed-in", "waiting", "returned", "seen"] as const;
export type HandInState = (typeof handInStates)[number];

export const handInStateWords: Readonly<Record<HandInState, string>> = {
  "not-handed-in": "not handed in",
  waiting: "waiting",
  returned: "returned",
  seen: "seen",
};

/** A hand-in, reduced to what a gradebook shows of it. */
export interface GradedHandIn {
  readonly handInId: string;
  /** Person's id, or what stands for somebody without one. */
  readonly student: string;
  readonly exerciseId: string;
  /** ISO 8601, UTC. */
  readonly handedInAt: string;
  readonly late: boolean;
  readonly state: Exclude<HandInState, "not-handed-in">;
  /** Of the returned feedback; null while there is none. */
  readonly score: RubricScore | null;
  readonly rubric: readonly RubricLine[];
  readonly marks: RubricMarks;
}

export interface GradeCell {
  readonly state: HandInState;
  /** Hand-ins of this student for this exercise, oldest first. */
  readonly tries: readonly GradedHandIn[];
  /** Of the newest try that was answered; null where none was. */
  readonly score: RubricScore | null;
}

export interface GradeRow {
  readonly student: string;
  /** One for each exercise, in their order. */
  readonly cells: readonly GradeCell[];
  /** Mean share over the exercises that have a whole score; null where none has. */
  readonly mean: number | null;
}

/** How far one line of a rubric was reached in a class. */
export interface LineMean {
  readonly title: string;
  readonly weight: number;
  /** Mean step, 0 to 4; null where nobody has a mark. */
  readonly mean: number | null;
  /** Students whose newest answered try has a mark in it. */
  readonly of: number;
}

export interface GradeColumn {
  readonly exerciseId: string;
  readonly mean: number | null;
  /** Students with a whole score. */
  readonly of: number;
  readonly lines: readonly LineMean[];
}

export interface Gradebook {
  readonly rows: readonly GradeRow[];
  readonly columns: readonly GradeColumn[];
}

const meanOf = (values: readonly number[]): number | null =>
  values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;

/** The newest of the tries that was answered: the one that counts. */
const answered = (tries: readonly GradedHandIn[]): GradedHandIn | undefined =>
  tries.findLast(({ score }) => score !== null);

function cellOf(tries: readonly GradedHandIn[]): GradeCell {
  const newest = tries.at(-1);
  return { state: newest?.state ?? "not-handed-in", tries, score: answered(tries)?.score ?? null };
}

/** Lines are told apart by their words: a line that was reworded between two hand-ins is two lines. */
function linesOf(counted: readonly GradedHandIn[]): readonly LineMean[] {
  const lines = new Map<string, { readonly line: RubricLine; readonly steps: number[] }>();
  for (const { rubric, marks } of counted)
    for (const line of rubric) {
      const found = lines.get(line.title) ?? { line, steps: [] };
      lines.set(line.title, found);
      const mark = Object.hasOwn(marks, line.id) ? marks[line.id] : undefined;
      if (typeof mark === "number") found.steps.push(mark);
    }
  return [...lines.values()].map(({ line: { title, weight }, steps }) => ({
    title,
    weight,
    mean: meanOf(steps),
    of: steps.length,
  }));
}

const shares = (cells: readonly GradeCell[]): readonly number[] =>
  cells.flatMap(({ score }) => (score === null || score.share === null ? [] : [score.share]));

/**
 * Students by exercises. Everybody and every exercise named is in it, whoever handed nothing in too; a score is that of
 * the newest try that was answered, and a mean is over whole scores alone: a part is no score.
 */
export function gradebook(
  students: readonly string[],
  exerciseIds: readonly string[],
  handIns: readonly GradedHandIn[],
): Gradebook {
  const sorted = handIns.toSorted((a, b) => a.handedInAt.localeCompare(b.handedInAt));
  const triesOf = (student: string, exerciseId: string) =>
    sorted.filter((one) => one.student === student && one.exerciseId === exerciseId);
  const rows = students.map((student) => {
    const cells = exerciseIds.map((exerciseId) => cellOf(triesOf(student, exerciseId)));
    return { student, cells, mean: meanOf(shares(cells)) };
  });
  const columns = exerciseIds.map((exerciseId, i) => {
    const cells = rows.flatMap(({ cells }) => cells[i] ?? []);
    const counted = cells.flatMap(({ tries }) => answered(tries) ?? []);
    return {
      exerciseId,
      mean: meanOf(shares(cells)),
      of: shares(cells).length,
      lines: linesOf(counted),
    };
  });
  return { rows, columns };
}

/** "82 %" of a share; "" where there is none. */
export const shareWords = (share: number | null): string =>
  share === null ? "" : `${Math.round(share * 100)} %`;
