import { describe, expect, it } from "vitest";
import { normalDensity, normalQuantile, normalShare } from "@/lib/numeric/normal";

describe("the standard normal distribution", () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.1, area under the curve from 0 to x (restated from memory).
  it.each([
    [0.5, 0.19146],
    [1, 0.34134],
    [1.96, 0.475],
    [2.5, 0.49379],
    [3.09, 0.499],
  ])("holds the handbook's area up to %d", (x, area) => {
    expect(normalShare(x) - 0.5).toBeCloseTo(area, 5);
    expect(normalShare(-x) + normalShare(x)).toBeCloseTo(1, 14);
  });

  it("is whole at the seams of its two formulas and far out", () => {
    expect(normalShare(-5.0000001) / normalShare(-4.9999999)).toBeCloseTo(1, 5);
    // DLMF 7.12: the tail of x = 10 (closed expansion, three terms).
    const tail = (normalDensity(10) / 10) * (1 - 1 / 100 + 3 / 10_000 - 15 / 1_000_000);
    expect(normalShare(-10) / tail).toBeCloseTo(1, 5);
    expect(normalShare(40)).toBe(1);
    expect(normalShare(NaN)).toBeNaN();
  });

  it("is undone by its quantile", () => {
    for (const p of [1e-9, 0.001, 0.025, 0.5, 0.9, 0.9999])
      expect(normalShare(normalQuantile(p))).toBeCloseTo(p, 12);
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963985, 8);
    expect([normalQuantile(0), normalQuantile(1), normalQuantile(1.1)]).toEqual([-Infinity, Infinity, NaN]);
  });
});
