import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { presentWeights } from "@/lib/diagnose/tuning";
import { bestOn, leaveOneSourceOut, type Fitting } from "./left-out";
import { logScore, type ScoredRow } from "./score";
import { weightGrid } from "./weight-grid";

const row = (source: string, toolRank: number, score: number): ScoredRow => ({
  id: `${source}-${toolRank}`,
  source,
  wanted: [],
  top: [],
  toolRank,
  lookUpRank: 1,
  named: false,
  strictRank: toolRank,
  probability: 0.5,
  logScore: score,
});

/** Two settings: the second is far better, but only on the cases of one source. Invented. */
const fitting: Fitting = {
  grid: [presentWeights, { ...presentWeights, leak: 0.5 }],
  rows: [
    [row("memoir", 4, -9), row("handbook", 1, -1), row("manual", 1, -1)],
    [row("memoir", 1, -1), row("handbook", 2, -2), row("manual", 2, -2)],
  ],
};

describe("leave one source out", () => {
  it("judges a source by weights that never saw it", () => {
    expect(bestOn(fitting, "by log score")).toBe(1);
    const { rows, sources } = leaveOneSourceOut(fitting, "by log score");
    // Fitted with the memoir in, it would stand first: that is the gain which is not there.
    expect(rows[0]!.toolRank).toBe(4);
    // The others are judged by the weights that only the memoir asked for.
    expect(rows.slice(1).map(({ toolRank }) => toolRank)).toEqual([2, 2]);
    expect(sources).toBe(3);
  });

  it("goes by first places where asked to, by the log score only between equals", () => {
    expect(bestOn(fitting, "by first places")).toBe(0);
    const equal: Fitting = { ...fitting, rows: [[row("a", 1, -3)], [row("a", 1, -2)]] };
    expect(bestOn(equal, "by first places")).toBe(1);
  });
});

/** A log score is proper (Good 1952, Rational Decisions, J. R. Statist. Soc. B 14, 107-114): the truth cannot be beaten. */
describe("the log score", () => {
  const expected = (truth: number, stated: readonly [number, number]) => {
    const list = [
      { id: "volt-low" as const, probability: stated[0] },
      { id: "volt-high" as const, probability: stated[1] },
    ];
    return truth * logScore(list, ["volt-low"]) + (1 - truth) * logScore(list, ["volt-high"]);
  };
  const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });

  it("is best for whoever states what is so", () => {
    fc.assert(
      fc.property(share, share, share, (truth, a, b) => {
        expect(expected(truth, [truth, 1 - truth])).toBeGreaterThanOrEqual(expected(truth, [a, b]) - 1e-12);
      }),
      { seed: 26 },
    );
  });

  it("would fall for boasting without its second half", () => {
    const boasting = (truth: number, p: number) => truth * Math.log(p) + (1 - truth) * Math.log(p);
    expect(boasting(0.5, 0.99)).toBeGreaterThan(boasting(0.5, 0.5));
    expect(expected(0.5, [0.99, 0.99])).toBeLessThan(expected(0.5, [0.5, 0.5]));
  });

  it("takes the likeliest of causes that count alike, and does not hold the rest against it", () => {
    const list = [
      { id: "volt-low" as const, probability: 0.5 },
      { id: "volt-high" as const, probability: 0.25 },
      { id: "gas-low" as const, probability: 0.2 },
    ];
    expect(logScore(list, ["volt-low", "volt-high"])).toBeCloseTo(Math.log(0.5) + Math.log(0.8), 12);
  });
});

describe("the grid of weights", () => {
  it("begins with the present table and holds each setting once", () => {
    const grid = weightGrid();
    expect(grid[0]).toEqual(presentWeights);
    expect(new Set(grid.map((weights) => JSON.stringify(weights))).size).toBe(grid.length);
    expect(grid.length).toBe(144);
  });
});
