import { describe, expect, it } from "vitest";
import { chiSquareQuantile, fQuantile } from "@/lib/numeric";
import { chiSquareShare } from "@/lib/numeric/chi-square";

describe("chi-square", () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.4, critical values (restated from memory).
  it.each([
    [0.95, 1, 3.841],
    [0.975, 2, 7.378],
    [0.95, 10, 18.307],
    [0.05, 10, 3.94],
    [0.975, 18, 31.526],
    [0.05, 60, 43.188],
    [0.95, 100, 124.342],
  ])("has the handbook's value at %d and %d degrees", (p, degrees, value) => {
    expect(chiSquareQuantile(p, degrees)).toBeCloseTo(value, 3);
  });

  it("is the closed form with two degrees, on both sides of its mean", () => {
    for (const x of [0.1, 1, 2, 3, 9, 40]) expect(chiSquareShare(x, 2)).toBeCloseTo(1 - Math.exp(-x / 2), 13);
  });

  it("is the quantile's inverse, and silent outside its domain", () => {
    for (const degrees of [1, 3, 59, 300])
      for (const p of [0.001, 0.3, 0.5, 0.999])
        expect(chiSquareShare(chiSquareQuantile(p, degrees), degrees)).toBeCloseTo(p, 10);
    expect([chiSquareQuantile(0, 3), chiSquareQuantile(0.5, 0), chiSquareShare(-1, 3)]).toEqual([
      NaN,
      NaN,
      NaN,
    ]);
    expect(chiSquareShare(0, 3)).toBe(0);
  });
});

describe("the quantile of F", () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.3, upper 5 % points (restated from memory).
  it.each([
    [3, 4, 6.591],
    [1, 10, 4.965],
    [5, 20, 2.711],
  ])("has the handbook's point for %d and %d", (above, below, f) => {
    expect(fQuantile(0.95, above, below)).toBeCloseTo(f, 3);
    expect(fQuantile(0.05, below, above)).toBeCloseTo(1 / f, 3);
  });

  it("goes over into chi-square where many degrees stand below", () => {
    expect(fQuantile(0.975, 6, 1e7)).toBeCloseTo(chiSquareQuantile(0.975, 6) / 6, 4);
    expect(fQuantile(1, 6, 6)).toBeNaN();
  });
});
