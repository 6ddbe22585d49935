import { describe, expect, it } from "vitest";
import { rulerTicks } from "@/lib/report";

const labels = (from: number, to: number, system: "metric" | "inch") =>
  rulerTicks(from, to, system).flatMap(({ mm, label }) => (label === null ? [] : [[mm, label]]));

describe("the ruler", () => {
  it("stands at whole millimetres, numbered in tens, 0 at the weld's start", () => {
    const ticks = rulerTicks(-6.4, 86.4, "metric");
    expect(ticks[0]?.mm).toBe(-6);
    expect(ticks.at(-1)?.mm).toBe(86);
    expect(ticks).toHaveLength(93);
    expect(labels(-6.4, 86.4, "metric")).toEqual(
      [0, 10, 20, 30, 40, 50, 60, 70, 80].map((mm) => [mm, String(mm)]),
    );
  });

  it("numbers inches for those who work in them", () => {
    const numbered = labels(-8, 160, "inch");
    expect(numbered.map(([, label]) => label)).toEqual(["0", "1", "2", "3", "4", "5", "6"]);
    numbered.forEach(([mm], inch) => expect(mm).toBeCloseTo(inch * 25.4, 9));
    expect(labels(0, 30, "inch").map(([, label]) => label)).toEqual(["0", "0.5", "1"]);
  });

  it("never has more numbers than can be read side by side", () => {
    for (const length of [3, 20, 55, 130, 400, 1500, 4000])
      for (const system of ["metric", "inch"] as const) {
        const count = labels(-0.08 * length, 1.08 * length, system).length;
        expect(count, `${length} ${system}`).toBeGreaterThan(0);
        expect(count, `${length} ${system}`).toBeLessThan(12);
      }
  });
});
