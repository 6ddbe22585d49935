import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { courseThrough } from "@/lib/trace/course";

const picks = fc
  .array(fc.record({ x: fc.integer({ min: 0, max: 4000 }), y: fc.integer({ min: 0, max: 3000 }) }), {
    minLength: 2,
    maxLength: 7,
  })
  .filter((list) =>
    list.every((p, i) => i === 0 || Math.hypot(p.x - list[i - 1]!.x, p.y - list[i - 1]!.y) > 30),
  );

describe("a course through picks", () => {
  it("passes through each of them, square everywhere and no shorter than their chords", () => {
    fc.assert(
      fc.property(picks, (list) => {
        const course = courseThrough(list)!;
        const chords = list
          .slice(1)
          .reduce((sum, p, i) => sum + Math.hypot(p.x - list[i]!.x, p.y - list[i]!.y), 0);
        expect(course.lengthPx).toBeGreaterThanOrEqual(chords - 1e-6);
        const step = course.lengthPx / 3000;
        for (const pick of list) {
          let nearest = Infinity;
          for (let s = 0; s <= course.lengthPx + step; s += step) {
            const { point } = course.at(Math.min(s, course.lengthPx));
            nearest = Math.min(nearest, Math.hypot(point.x - pick.x, point.y - pick.y));
          }
          expect(nearest).toBeLessThanOrEqual(step);
        }
        const { along, across } = course.at(course.lengthPx / 3);
        expect(along.x * across.x + along.y * across.y).toBeCloseTo(0, 9);
        expect(Math.hypot(across.x, across.y)).toBeCloseTo(1, 9);
      }),
      { seed: 11, numRuns: 40 },
    );
  });

  it("keeps to a circle that its picks lie on, within a hundredth of its radius", () => {
    const at = (turn: number) => ({ x: 500 + 400 * Math.cos(turn), y: 500 + 400 * Math.sin(turn) });
    const course = courseThrough([0, 0.4, 0.8, 1.2, 1.6].map(at))!;
    for (let s = 0; s <= course.lengthPx; s += course.lengthPx / 50) {
      const { point } = course.at(s);
      expect(Math.abs(Math.hypot(point.x - 500, point.y - 500) - 400)).toBeLessThan(4);
    }
  });

  it("is none through one point", () => {
    expect(
      courseThrough([
        { x: 1, y: 1 },
        { x: 1, y: 1 },
      ]),
    ).toBeNull();
  });
});
