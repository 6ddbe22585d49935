import { describe, expect, it } from "vitest";
import { fShareAbove, studentQuantile } from "@/lib/numeric";
import { normalQuantile } from "@/lib/numeric/normal";

describe("Student's t", () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.2, critical values of t (restated from memory).
  it.each([
    [0.975, 1, 12.706],
    [0.975, 4, 2.776],
    [0.975, 10, 2.228],
    [0.95, 10, 1.812],
    [0.99, 20, 2.528],
    [0.975, 100, 1.984],
  ])("has the handbook's value at %d and %d degrees", (p, degrees, t) => {
    expect(studentQuantile(p, degrees)).toBeCloseTo(t, 3);
    expect(studentQuantile(1 - p, degrees)).toBeCloseTo(-t, 3);
  });

  it("becomes the normal one, and is silent outside its domain", () => {
    expect(studentQuantile(0.975, Infinity)).toBe(normalQuantile(0.975));
    expect(studentQuantile(0.5, 7)).toBeCloseTo(0, 12);
    expect(studentQuantile(0.9, 0)).toBeNaN();
  });
});

describe("F", () => {
  // NIST/SEMATECH e-Handbook 1.3.6.7.3, upper 5 % and 1 % points of F (restated from memory).
  it.each([
    [0.05, 3, 4, 6.591],
    [0.05, 1, 10, 4.965],
    [0.05, 5, 20, 2.711],
    [0.01, 2, 6, 10.925],
  ])("has a share of %d above the handbook's point for %d and %d", (share, above, below, f) => {
    expect(fShareAbove(f, above, below)).toBeCloseTo(share, 4);
  });

  it("is the square of t where one degree stands above", () => {
    expect(fShareAbove(studentQuantile(0.975, 8) ** 2, 1, 8)).toBeCloseTo(0.05, 12);
    expect(fShareAbove(-1, 1, 8)).toBeNaN();
  });
});
