import { describe, expect, it } from "vitest";
import { pressLine, restThere, type RubricMarks } from "@/lib/course";

const lines = ["toes", "even", "ends"].map((id) => ({ id, title: id, weight: 1 }));

describe("marking by a line's number", () => {
  it("goes from there down by quarters, then open, then there again", () => {
    const steps: unknown[] = [];
    let marks: RubricMarks = {};
    for (let press = 0; press < 7; press += 1) {
      marks = pressLine(lines, marks, 1);
      steps.push(marks["even"]);
    }
    expect(steps).toEqual([4, 3, 2, 1, 0, undefined, 4]);
    expect(Object.keys(marks)).toEqual(["even"]);
  });

  it("a line left out is there again, and a number without a line does nothing", () => {
    expect(pressLine(lines, { toes: "left-out" }, 0)).toEqual({ toes: 4 });
    const marks = { toes: 2 } as const;
    expect(pressLine(lines, marks, 7)).toBe(marks);
  });

  it("all others are there, what was marked stays", () => {
    expect(restThere(lines, { even: 1, ends: "left-out" })).toEqual({ toes: 4, even: 1, ends: "left-out" });
  });
});
