import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { faceCentred, firstPoints, shuffled, twoLevel } from "@/lib/trials/designs";
import { ways } from "@/lib/trials/trial";

const column = (design: readonly (readonly number[])[], ...of: readonly number[]): readonly number[] =>
  design.map((point) => of.reduce((product, i) => product * point[i]!, 1));

describe("two-level designs", () => {
  it("stand in the handbook's standard order (NIST/SEMATECH e-Handbook, table 3.4 of 5.3.3.3.1)", () => {
    expect(twoLevel(3)).toEqual([
      [-1, -1, -1],
      [1, -1, -1],
      [-1, 1, -1],
      [1, 1, -1],
      [-1, -1, 1],
      [1, -1, 1],
      [-1, 1, 1],
      [1, 1, 1],
    ]);
  });

  it("halve by 3 = 12 (NIST/SEMATECH e-Handbook 5.3.3.4.2: the half of the cube on which 123 is always 1)", () => {
    const half = twoLevel(3, [{ factor: 2, of: [0, 1] }]);
    expect(half).toHaveLength(4);
    expect(column(half, 0, 1, 2)).toEqual([1, 1, 1, 1]);
    // Its aliases: 1 = 23, 2 = 13.
    expect(column(half, 0)).toEqual(column(half, 1, 2));
    expect(column(half, 1)).toEqual(column(half, 0, 2));
  });

  it("quarter by 4 = 12, 5 = 13 with every column level and apart from every other", () => {
    const quarter = twoLevel(5, [
      { factor: 3, of: [0, 1] },
      { factor: 4, of: [0, 2] },
    ]);
    expect(quarter).toHaveLength(8);
    for (let i = 0; i < 5; i += 1) {
      expect(column(quarter, i).reduce((a, b) => a + b, 0)).toBe(0);
      for (let j = 0; j < i; j += 1) expect(column(quarter, i, j).reduce((a, b) => a + b, 0)).toBe(0);
    }
  });

  it("keep a composite's star on the faces", () => {
    expect(faceCentred(2)).toHaveLength(8);
    expect(faceCentred(1)).toEqual([[-1], [1]]);
  });
});

describe("the beads a series begins with", () => {
  it("lie within the ends, are as many as asked for, and come in an order that the seed fixes", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...ways),
        fc.constantFrom(1, 2),
        fc.integer({ min: 3, max: 30 }),
        fc.integer({ min: 0, max: 1e9 }),
        (way, knobs, budget, seed) => {
          const points = firstPoints(way, knobs, budget, seed);
          expect(points.flat().every((x) => Math.abs(x) <= 1)).toBe(true);
          expect(firstPoints(way, knobs, budget, seed)).toEqual(points);
          const round = { factorial: 2 ** knobs + 1, surface: knobs === 1 ? 3 : 9, seek: 0 }[way];
          if (way === "seek") expect(points.length).toBe(Math.min(budget, knobs === 1 ? 3 : 5));
          else expect(points.length).toBe(Math.max(budget, round));
        },
      ),
      { seed: 1, numRuns: 200 },
    );
  });

  it("repeat the middle before a corner, because the scatter is known from repeats alone", () => {
    const points = firstPoints("factorial", 2, 7, 3).map(String);
    expect(points.filter((at) => at === "0,0")).toHaveLength(3);
  });

  it("are put in every order about as often as in any other", () => {
    const counts = new Map<string, number>();
    for (let seed = 0; seed < 6000; seed += 1) {
      const order = shuffled([1, 2, 3], seed).join("");
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    expect(counts.size).toBe(6);
    // Chi-squared with 5 degrees of freedom: 20.5 at one in a thousand (NIST/SEMATECH e-Handbook 1.3.6.7.4, from memory).
    const chi = [...counts.values()].reduce((sum, n) => sum + (n - 1000) ** 2 / 1000, 0);
    expect(chi).toBeLessThan(20.5);
  });
});
