import { describe, expect, it } from "vitest";
import { binaryEntropyBits, clamp, entropyBits, interpolate, logOdds } from "@/lib/numeric";

describe("entropy", () => {
  it("is 0 when sure, log2 n when even, and NaN for a negative part", () => {
    expect(entropyBits([0, 1])).toBe(0);
    expect(entropyBits(Array.from({ length: 8 }, () => 1 / 8))).toBeCloseTo(3, 12);
    expect(binaryEntropyBits(0.11)).toBeCloseTo(0.499916, 6);
    expect(entropyBits([-0.1, 1.1])).toBeNaN();
  });
});

describe("interpolate, clamp, logOdds", () => {
  it("joins knots and is flat beyond them", () => {
    const knots = [
      [2, 10],
      [4, 30],
      [7, 0],
    ] as const;
    expect([1, 3, 4, 5.5, 9].map((x) => interpolate(knots, x))).toEqual([10, 20, 30, 15, 0]);
    expect([interpolate([], 1), interpolate(knots, NaN)].every(Number.isNaN)).toBe(true);
  });
  it("clamps with both ends belonging", () => {
    expect([clamp(1, 2, 5), clamp(5, 2, 5), clamp(9, 2, 5)]).toEqual([2, 5, 5]);
  });
  it("is odd about a half and infinite at the ends", () => {
    expect(logOdds(0.8)).toBeCloseTo(-logOdds(0.2), 12);
    expect([logOdds(0), logOdds(1)]).toEqual([-Infinity, Infinity]);
  });
});
