import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rubricScore, rubricSteps, scoreText, type RubricMarks } from "@/lib/course";
import { RubricSchema } from "@/lib/course/rubric";

const lines = [
  { id: "a", title: "Profile", weight: 3 },
  { id: "b", title: "Toes", weight: 2 },
  { id: "c", title: "Cleaned", weight: 1 },
];

describe("the arithmetic of a rubric", () => {
  // Worked by hand: 3·3/4 + 2·4/4 + 1·0/4 = 2.25 + 2 + 0 = 4.25 of 6, 70.8 %.
  it("adds weight by quarters", () => {
    const score = rubricScore(lines, { a: 3, b: 4, c: 0 });
    expect(score).toEqual({ points: 4.25, outOf: 6, open: 0, share: 4.25 / 6 });
    expect(scoreText(score)).toBe("4.25 of 6 (71 %)");
  });

  // 3·3/4 + 1·2/4 = 2.75 of 4: a line left out counts neither for nor against.
  it("takes a line that does not apply out of both sides", () => {
    expect(rubricScore(lines, { a: 3, b: "left-out", c: 2 })).toMatchObject({ points: 2.75, outOf: 4 });
  });

  it("gives no share while a line is open, and none when nothing counts", () => {
    const open = rubricScore(lines, { a: 4 });
    expect(open).toEqual({ points: 3, outOf: 6, open: 2, share: null });
    expect(scoreText(open)).toBe("3 of 6, 2 lines not marked");
    expect(rubricScore(lines, { a: "left-out", b: "left-out", c: "left-out" }).share).toBeNull();
    expect(scoreText(rubricScore([], {}))).toBe("");
  });

  it("ignores marks of lines that are gone, and keys every object has", () => {
    expect(rubricScore(lines, { gone: 4 } as RubricMarks).points).toBe(0);
    expect(rubricScore([{ id: "toString", title: "x", weight: 1 }], {}).open).toBe(1);
  });

  it("stays between nothing and all, and all steps full is exactly one", () => {
    const line = fc.record({
      weight: fc.integer({ min: 1, max: 20 }),
      mark: fc.constantFrom(...rubricSteps),
    });
    fc.assert(
      fc.property(fc.array(line, { minLength: 1, maxLength: 20 }), (drawn) => {
        const rubric = drawn.map(({ weight }, i) => ({ id: `l${i}`, title: "x", weight }));
        const marks = Object.fromEntries(drawn.map(({ mark }, i) => [`l${i}`, mark]));
        const { share, points, outOf } = rubricScore(rubric, marks);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThanOrEqual(1);
        expect(points * 4).toBe(drawn.reduce((sum, { weight, mark }) => sum + weight * mark, 0));
        const full = Object.fromEntries(drawn.map((_, i) => [`l${i}`, 4 as const]));
        expect(rubricScore(rubric, full)).toMatchObject({ points: outOf, share: 1 });
      }),
    );
  });

  it("refuses two lines of one id", () => {
    expect(RubricSchema.safeParse([lines[0], lines[0]]).success).toBe(false);
  });
});
