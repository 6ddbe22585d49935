import { describe, expect, it } from "vitest";
import { findSignals, usualRules, type ZonePoint } from "@/lib/trends/signals";

const at = (...sigmas: number[]): ZonePoint[] =>
  sigmas.map((s) => ({ sigmas: s, beyondLimit: s > 3 ? "above" : s < -3 ? "below" : null }));

/** Rules as in the Western Electric handbook, 1956, and NIST/SEMATECH e-Handbook 6.3.2: from memory. */
describe("signals", () => {
  it("a point beyond three sigma, on either side", () => {
    expect(findSignals(at(0, 3.1, 0, -3.2), usualRules)).toEqual([
      { rule: "beyond-limit", side: "above", from: 1, to: 1 },
      { rule: "beyond-limit", side: "below", from: 3, to: 3 },
    ]);
  });

  it("eight in a row on one side, and no fewer; a longer run is one signal", () => {
    const run = (n: number) => [-0.5, ...Array.from({ length: n }, () => 0.4), -0.5];
    expect(findSignals(at(...run(7)), usualRules)).toEqual([]);
    expect(findSignals(at(...run(8)), usualRules)).toEqual([
      { rule: "eight-on-one-side", side: "above", from: 1, to: 8 },
    ]);
    expect(findSignals(at(...run(11)), usualRules)).toEqual([
      { rule: "eight-on-one-side", side: "above", from: 1, to: 11 },
    ]);
  });

  it("a point on the line belongs to no side and breaks a run", () => {
    expect(findSignals(at(1, 1, 1, 1, 0, 1, 1, 1, 1), usualRules)).toEqual([]);
  });

  it("two of three beyond two sigma on the same side", () => {
    const rule = ["two-of-three-beyond-two-sigma"] as const;
    expect(findSignals(at(2.1, 0, 2.2), rule)).toEqual([{ rule: rule[0], side: "above", from: 0, to: 2 }]);
    expect(findSignals(at(2.1, 0, -2.2), rule)).toEqual([]);
    expect(findSignals(at(2.1, 0, 0, 2.2), rule)).toEqual([]);
  });

  it("four of five beyond one sigma on the same side", () => {
    const rule = ["four-of-five-beyond-one-sigma"] as const;
    expect(findSignals(at(-1.1, -1.2, 0, -1.3, -1.4), rule)).toEqual([
      { rule: rule[0], side: "below", from: 0, to: 4 },
    ]);
    expect(findSignals(at(-1.1, -1.2, 0, -1.3, -0.9), rule)).toEqual([]);
  });

  it("mirrors with the data", () => {
    const data = [0.3, 1.2, 2.4, 2.2, -0.1, 1.5, 1.1, 1.7, 1.2, 0.2, 0.2, 0.2, 0.2, 3.4];
    const above = findSignals(at(...data), ["eight-on-one-side", "two-of-three-beyond-two-sigma"]);
    const below = findSignals(at(...data.map((s) => -s)), [
      "eight-on-one-side",
      "two-of-three-beyond-two-sigma",
    ]);
    expect(above.length).toBeGreaterThan(0);
    expect(below).toEqual(above.map((signal) => ({ ...signal, side: "below" })));
  });
});
