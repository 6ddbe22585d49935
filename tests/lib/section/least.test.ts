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
