import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { shareOf } from "@/lib/trends";
import { compareRejects, shareDifference, type ShareDifference } from "@/lib/trends/compare";
import { bead } from "./bead";

/**
 * Newcombe, "Interval estimation for the difference between independent proportions: comparison of eleven methods",
 * Statistics in Medicine 17 (1998), 873-890, Table II, method 10, a/m - b/n. From memory, four decimals.
 */
const newcombe: readonly [a: number, m: number, b: number, n: number, low: number, high: number][] = [
  [56, 70, 48, 80, 0.0524, 0.3339],
  [9, 10, 3, 10, 0.1705, 0.809],
  [6, 7, 2, 7, 0.0582, 0.8062],
  [5, 56, 0, 29, -0.0381, 0.1926],
  [0, 10, 0, 20, -0.1611, 0.2775],
  [0, 10, 0, 10, -0.2775, 0.2775],
  [10, 10, 0, 20, 0.6791, 1],
  [10, 10, 0, 10, 0.6075, 1],
];

function difference(a: number, m: number, b: number, n: number): ShareDifference {
  const result = shareDifference({ count: b, of: n }, { count: a, of: m });
  if (!result.ok) throw new Error(result.issues[0]?.code);
  return result.value;
}

describe("difference of two shares", () => {
  it.each(newcombe)("%i/%i - %i/%i: as in Newcombe 1998, Table II", (a, m, b, n, low, high) => {
    const found = difference(a, m, b, n);
    expect(found.difference).toBeCloseTo(a / m - b / n, 12);
    expect(Math.abs(found.low - low)).toBeLessThanOrEqual(0.00005 + 1e-12);
    expect(Math.abs(found.high - high)).toBeLessThanOrEqual(0.00005 + 1e-12);
  });

  it("changes sign when the groups change places, and stays within -1 and 1", () => {
    const pair = fc
      .integer({ min: 1, max: 80 })
      .chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)));
    fc.assert(
      fc.property(pair, pair, ([a, m], [b, n]) => {
        const forth = difference(a, m, b, n);
        const back = difference(b, n, a, m);
        expect(back.low).toBeCloseTo(-forth.high, 12);
        expect(back.high).toBeCloseTo(-forth.low, 12);
        expect(forth.low).toBeGreaterThanOrEqual(-1 - 1e-12);
        expect(forth.high).toBeLessThanOrEqual(1 + 1e-12);
        expect(forth.before).toEqual(shareOf(b, n));
      }),
    );
  });
});

describe("before and after", () => {
  const before = [
    bead("a", { verdict: "reject" }),
    bead("b", { verdict: "reject" }),
    bead("c", { verdict: null }),
  ];
  const after = [bead("d", { verdict: "accept" }), bead("e", { verdict: "reject" })];

  it("compares the decided beads", () => {
    expect(compareRejects(before, after)).toMatchObject({
      ok: true,
      value: { before: { count: 2, of: 2 }, after: { count: 1, of: 2 }, difference: -0.5 },
    });
  });

  it("refuses an empty side and a bead on both", () => {
    expect(compareRejects([bead("c", { verdict: "cannot-say" })], after)).toMatchObject({
      ok: false,
      issues: [{ code: "group-empty", data: { side: "before" } }],
    });
    expect(compareRejects(before, [])).toMatchObject({ ok: false, issues: [{ data: { side: "after" } }] });
    expect(compareRejects(before, before)).toMatchObject({
      ok: false,
      issues: [{ code: "bead-on-both-sides", data: { beadId: "a" } }],
    });
  });
});
