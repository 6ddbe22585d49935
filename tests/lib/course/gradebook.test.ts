import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { gradebook, rubricScore, type GradedHandIn, type RubricMarks } from "@/lib/course";
import { inDepth } from "../../setup/in-depth";

const rubric = [
  { id: "toes", title: "Toes", weight: 3 },
  { id: "even", title: "Even", weight: 1 },
];
let next = 0;
function handIn(
  student: string,
  exerciseId: string,
  marks: RubricMarks | null,
  more: Partial<GradedHandIn> = {},
) {
  next += 1;
  return {
    handInId: `h${next}`,
    student,
    exerciseId,
    handedInAt: `2026-11-${String(next).padStart(2, "0")}T10:00:00.000Z`,
    late: false,
    state: marks ? "returned" : "waiting",
    score: marks && rubricScore(rubric, marks),
    rubric: marks ? rubric : [],
    marks: marks ?? {},
    ...more,
  } satisfies GradedHandIn;
}

describe("a gradebook", () => {
  it("has a row for everybody and a column for every exercise, the state of the newest try and its answered score", () => {
    next = 0;
    const first = handIn("ada", "lap", { toes: 2, even: 4 });
    const second = handIn("ada", "lap", null);
    const book = gradebook(["ada", "bo"], ["lap", "tee"], [second, first]);
    // 3 · 2/4 + 1 · 4/4 = 2.5 of 4
    expect(book.rows[0]?.cells[0]).toEqual({
      state: "waiting",
      tries: [first, second],
      score: { points: 2.5, outOf: 4, open: 0, share: 0.625 },
    });
    expect(book.rows[1]?.cells.map(({ state }) => state)).toEqual(["not-handed-in", "not-handed-in"]);
    expect(book.rows.map(({ mean }) => mean)).toEqual([0.625, null]);
  });

  it("takes no part of a rubric for a score, but its marked lines for the lines' means", () => {
    next = 0;
    const book = gradebook(
      ["ada", "bo", "cy"],
      ["lap"],
      [
        handIn("ada", "lap", { toes: 2 }),
        handIn("bo", "lap", { toes: 4, even: 4 }),
        handIn("cy", "lap", { toes: "left-out", even: 0 }),
      ],
    );
    // bo 4/4, cy 0/1: mean 0.5 of two; ada's is not whole.
    expect(book.columns[0]).toMatchObject({ mean: 0.5, of: 2 });
    expect(book.columns[0]?.lines).toEqual([
      { title: "Toes", weight: 3, mean: 3, of: 2 },
      { title: "Even", weight: 1, mean: 2, of: 2 },
    ]);
  });

  it("a later answered try replaces the earlier, whatever came between", () => {
    next = 0;
    const book = gradebook(
      ["ada"],
      ["lap"],
      [
        handIn("ada", "lap", { toes: 0, even: 0 }),
        handIn("ada", "lap", { toes: 4, even: 4 }, { state: "seen" }),
      ],
    );
    expect(book.rows[0]?.cells[0]).toMatchObject({ state: "seen", score: { share: 1 } });
  });

  it("law: each hand-in stands in exactly one cell, and a mean lies between the scores it is of", () => {
    const some = fc.array(
      fc.record({
        student: fc.constantFrom("a", "b", "c"),
        exerciseId: fc.constantFrom("x", "y"),
        toes: fc.constantFrom(0, 1, 2, 3, 4),
      }),
      { maxLength: 12 },
    );
    fc.assert(
      fc.property(some, (asked) => {
        next = 0;
        const all = asked.map(({ student, exerciseId, toes }) =>
          handIn(student, exerciseId, { toes: toes as 0, even: 4 }),
        );
        const { rows, columns } = gradebook(["a", "b", "c"], ["x", "y"], all);
        const placed = rows.flatMap(({ cells }) => cells.flatMap(({ tries }) => tries));
        expect(placed.map(({ handInId }) => handInId).sort()).toEqual(
          all.map(({ handInId }) => handInId).sort(),
        );
        for (const { mean, of } of columns) expect(mean === null).toBe(of === 0);
        for (const { cells, mean } of rows) {
          const shares = cells.flatMap(({ score }) => (score === null || score.share === null ? [] : [score.share]));
          if (mean === null) expect(shares).toEqual([]);
          else expect(mean >= Math.min(...shares) - 1e-12 && mean <= Math.max(...shares) + 1e-12).toBe(true);
        }
      }),
      { numRuns: inDepth(60, 1000), seed: 18 },
    );
  });
});
