import { describe, expect, it } from "vitest";
import { chance, normal } from "../measure/camera";
import { leastShift } from "@/lib/section/least";

describe("how much too small the least of several picks comes out", () => {
  /** Expected extreme of n normals in standard deviations (Tippett, Biometrika 17, 1925): 0.56419, 0.84628, 1.53875. */
  it.each([
    [2, 0.56419],
    [3, 0.84628],
    [10, 1.53875],
  ])("%d equal values: %d deviations", (n, deviations) => {
    const shift = leastShift({
      values: Array.from({ length: n }, () => 7),
      sigmas: Array.from({ length: n }, () => 0.2),
    });
    expect(shift).toBeCloseTo(-0.2 * deviations, 4);
  });

  it("is nothing for one value, for a value that stands clear, and without error", () => {
    expect(leastShift({ values: [5], sigmas: [0.1] })).toBe(0);
    expect(leastShift({ values: [5, 9, 9], sigmas: [0.1, 0.1, 0.1] })).toBeCloseTo(0, 6);
    expect(leastShift({ values: [5, 5], sigmas: [0, 0] })).toBe(0);
  });

  it("agrees with a hundred thousand draws of unequal values and errors", () => {
    const random = chance(7);
    const values = [5, 5.1, 5.05, 5.4];
    const sigmas = [0.1, 0.2, 0.05, 0.3];
    let sum = 0;
    for (let i = 0; i < 100_000; i++)
      sum += Math.min(...values.map((v, k) => v + sigmas[k]! * normal(random)));
    expect(leastShift({ values, sigmas })).toBeCloseTo(sum / 100_000 - 5, 2);
  });
});

/** What `measureSection` does with it, on picks of deviation 1: central differences, the shift taken off and counted. */
describe("the least, put right", () => {
  it.each([
    [[0, 0]],
    [[0, 1]],
    [[0, 2]],
    [[0, 0, 0]],
    [[0, 0.3, 0.6, 1]],
    [[0, 0.2, 0.2, 0.8, 0.8, 1.8, 1.8]],
  ])("of %j holds the truth in 93 to 98 of 100", (truths) => {
    const random = chance(5);
    const draws = 4000;
    let [inside, raw, right] = [0, 0, 0];
    for (let k = 0; k < draws; k++) {
      const values = truths.map((truth) => truth + normal(random));
      const shift = leastShift({ values, sigmas: values.map(() => 1) });
      const at = (i: number, by: number) => Math.min(...values.map((value, j) => value + (i === j ? by : 0)));
      const squares = values.reduce((sum, _, i) => sum + ((at(i, 1) - at(i, -1)) / 2) ** 2, 0);
      const least = Math.min(...values);
      if (Math.abs(least - shift) <= 2 * Math.hypot(Math.sqrt(squares), shift)) inside++;
      raw += least / draws;
      right += (least - shift) / draws;
    }
    expect(inside / draws).toBeGreaterThan(0.93);
    expect(inside / draws).toBeLessThan(0.98);
    // Nearer than the least itself where several compete; within a tenth of a deviation where one stands clear.
    expect(Math.abs(right)).toBeLessThan(Math.max(0.1, Math.abs(raw)));
  });
});
