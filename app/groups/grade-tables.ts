import { handInStateWords, scoreText } from "@/lib/course";
import type { Table } from "@/lib/exchange";
import type { ClassGrades } from "./class-grades";

const shareCell = (share: number | null): number | null => (share === null ? null : Number(share.toFixed(4)));

/** One row a student and exercise, whoever handed nothing in too; one column for each line of a rubric. */
export function gradeTable({ exercises, students, book }: ClassGrades): Table {
  const titles = [...new Set(book.columns.flatMap(({ lines }) => lines.map(({ title }) => title)))];
  const columns = [
    "student",
    "identification",
    "exercise",
    "state",
    "attempts",
    "late",
    "handed_in",
    "points",
    "out_of",
    "score",
    ...titles.map((title) => `step_of_4: ${title}`),
  ];
  const rows = book.rows.flatMap(({ cells }, i) =>
    cells.map(({ state, tries, score }, j) => {
      const newest = tries.at(-1);
      const answered = tries.findLast((one) => one.score !== null);
      return [
        students[i]?.name ?? null,
        students[i]?.mark ?? null,
        exercises[j]?.title ?? null,
        handInStateWords[state],
        tries.length,
        newest ? (newest.late ? "yes" : "no") : null,
        newest?.handedInAt ?? null,
        score?.points ?? null,
        score?.outOf ?? null,
        shareCell(score?.share ?? null),
        ...titles.map((title) => {
          const line = answered?.rubric.find((one) => one.title === title);
          const mark = line && answered?.marks[line.id];
          return mark === undefined ? null : mark === "left-out" ? "not here" : mark;
        }),
      ];
    }),
  );
  return { columns, rows };
}

/** The same for a program: scores as numbers, null where there is none. */
export function gradeJson({ group, exercises, students, book }: ClassGrades) {
  return {
    group: { id: group.id, name: group.name },
    exercises: exercises.map(({ id, title, dueAt }, i) => {
      const { mean, of, lines } = book.columns[i] ?? { mean: null, of: 0, lines: [] };
      return { id, title, dueAt, mean, of, lines };
    }),
    students: students.map(({ personId, name, mark }, i) => ({
      personId,
      name,
      mark,
      mean: book.rows[i]?.mean ?? null,
      exercises: (book.rows[i]?.cells ?? []).map(({ state, tries, score }, j) => ({
        exerciseId: exercises[j]?.id ?? "",
        state,
        attempts: tries.length,
        handInIds: tries.map(({ handInId }) => handInId),
        points: score?.points ?? null,
        outOf: score?.outOf ?? null,
        score: score?.share ?? null,
        words: score ? scoreText(score) : null,
      })),
    })),
  };
}
