import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isMet, median, quantile, roundedAgainst, table, type Figure } from "./figures";

const figure = (change: Partial<Figure>): Figure => ({
  work: "pan",
  ours: 13,
  unit: "ms",
  baseline: { name: "bare", value: 10 },
  goal: { kind: "ratio", most: 1.3 },
  ...change,
});

describe("figures of a bench", () => {
  it("are met at the goal and not a hair beyond it", () => {
    expect(isMet(figure({}))).toBe(true);
    expect(isMet(figure({ ours: 13.0001 }))).toBe(false);
    expect(isMet(figure({ goal: { kind: "beyond", most: 3 } }))).toBe(true);
    expect(isMet(figure({ goal: { kind: "beyond", most: 2.99 } }))).toBe(false);
    expect(isMet(figure({ goal: { kind: "least", least: 13 } }))).toBe(true);
    expect(isMet(figure({ goal: { kind: "least", least: 13.1 } }))).toBe(false);
    expect(isMet(figure({ goal: { kind: "most", most: 12.9 } }))).toBe(false);
    expect(isMet(figure({ goal: null }))).toBeNull();
  });

  it("that could not be measured are not met, whatever the goal", () => {
    const goals: readonly Figure["goal"][] = [
      { kind: "ratio", most: 9 },
      { kind: "beyond", most: 9 },
      { kind: "most", most: 9 },
      { kind: "least", least: 0 },
    ];
    for (const goal of goals) expect(isMet(figure({ ours: NaN, goal }))).toBe(false);
    expect(isMet(figure({ baseline: { name: "bare", value: NaN } }))).toBe(false);
    expect(table([figure({ ours: NaN })])).toMatch(/not measured.*NOT met/);
  });

  it("are never shown better than they are", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 1e5, noNaN: true }),
        fc.integer({ min: 0, max: 3 }),
        (v, digits) => {
          const [up, down] = [
            Number(roundedAgainst(v, digits, "little")),
            Number(roundedAgainst(v, digits, "much")),
          ];
          const hair = v * 1e-11;
          expect(up).toBeGreaterThanOrEqual(v - hair);
          expect(down).toBeLessThanOrEqual(v + hair);
          expect(up - down).toBeLessThanOrEqual(10 ** -digits + hair);
        },
      ),
      { seed: 26, numRuns: 300 },
    );
    expect(roundedAgainst(1.3, 2, "little")).toBe("1.30");
    expect(roundedAgainst(1.3001, 2, "little")).toBe("1.31");
    expect(roundedAgainst(94.99, 0, "much")).toBe("94");
  });

  it("take their quantiles from what was measured", () => {
    expect(quantile([5, 1, 4, 2, 3], 0.5)).toBe(3);
    expect(median([4, 1, 3, 2])).toBe(3);
    expect(
      quantile(
        Array.from({ length: 100 }, (_, i) => i),
        0.95,
      ),
    ).toBe(95);
    expect(quantile([7], 0.95)).toBe(7);
    expect(quantile([], 0.5)).toBeNaN();
  });

  it("stand in one table, a line each, with baseline, ratio, goal and whether it is met", () => {
    const lines = table([
      figure({ ours: 13.01 }),
      figure({ work: "start", baseline: null, goal: { kind: "most", most: 100 } }),
    ]).split("\n");
    expect(lines).toHaveLength(3);
    expect(lines[1]).toMatch(/^pan {4}14 ms +10 ms +bare +1\.31 +at most 1\.3 times +NOT met$/);
    expect(lines[2]).toMatch(/^start +13 ms +at most 100 ms +met$/);
  });
});
