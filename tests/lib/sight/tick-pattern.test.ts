import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { divisionOf, divisions } from "@/lib/sight/tick-pattern";
import { random } from "../diagnose/sweep/grid";

/** Lengths of lines from `from` on, longer by a third with each class, off by up to `scatter` of a short one, and growing along. */
function lines(every: readonly number[], from: number, count: number, scatter: number, seed: number) {
  const chance = random(seed);
  return Array.from({ length: count }, (_, k) => {
    const rank = every.findIndex((one) => (from + k) % one === 0);
    const own = 3 * 1.33 ** (every.length - 1 - rank);
    return { k, length: (own + 3 * scatter * (2 * chance() - 1)) * (1 + (0.15 * k) / count) };
  });
}

const start = fc.integer({ min: 0, max: 40 });
const seed = fc.integer({ min: 1, max: 1_000_000 });

describe("the division of a rule", () => {
  it("is told by the pattern of its long lines, wherever it begins and at a slant", () => {
    fc.assert(
      fc.property(fc.constantFrom(...divisions), start, seed, (division, from, chance) => {
        const count = 3 * division.every[0]! + 5;
        expect(divisionOf(lines(division.every, from, count, 0.05, chance))?.id).toBe(division.id);
      }),
      { seed: 5, numRuns: 120 },
    );
  });

  it("is not told of lines that are all alike, that scatter, or that are longer at each fourth, fifth or tenth alone", () => {
    fc.assert(
      fc.property(start, seed, (from, chance) => {
        expect(divisionOf(lines([1], from, 60, 0.1, chance))).toBeNull();
        expect(divisionOf(lines([1], from, 60, 0.9, chance))).toBeNull();
        expect(divisionOf(lines([5, 1], from, 60, 0.1, chance))).toBeNull();
        expect(divisionOf(lines([4, 1], from, 60, 0.1, chance))).toBeNull();
        expect(divisionOf(lines([10, 1], from, 60, 0.02, chance))).toBeNull();
      }),
      { seed: 6, numRuns: 60 },
    );
  });

  it("is not told where fewer than two of its longest lines can be in sight", () => {
    expect(divisionOf(lines([10, 5, 1], 0, 19, 0, 1))).toBeNull();
    expect(divisionOf(lines([10, 5, 1], 0, 25, 0, 1))?.id).toBe("mm");
  });
});
