import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pareto } from "@/lib/trends";
import { causeTallies, imperfectionTallies } from "@/lib/trends/pareto";
import { bead } from "./bead";

const beads = [
  bead("a", { imperfections: ["spatter", "undercut", "undercut"], confirmedCause: "travel-fast" }),
  bead("b", { imperfections: ["undercut", "surface-porosity"] }),
  bead("c", { imperfections: ["overlap"], confirmedCause: "travel-slow" }),
  bead("d", { imperfections: ["undercut", "spatter"], confirmedCause: "travel-fast" }),
];

describe("Pareto", () => {
  it("counts beads, largest first, with the running share", () => {
    const { total, rows } = pareto(imperfectionTallies(beads));
    expect(total).toBe(7);
    expect(rows.map(({ key, count, cumulative }) => [key, count, cumulative.count])).toEqual([
      ["undercut", 3, 3],
      ["spatter", 2, 5],
      // One each: in the order they were first seen.
      ["surface-porosity", 1, 6],
      ["overlap", 1, 7],
    ]);
    expect(rows[0]?.beadIds).toEqual(["a", "b", "d"]);
    expect(rows[1]?.cumulative).toMatchObject({ count: 5, of: 7 });
  });

  it("gathers the rest in a last row, but never a single one", () => {
    const { rows } = pareto(imperfectionTallies(beads), { most: 1 });
    expect(rows.map(({ key, keys, count }) => [key, keys, count])).toEqual([
      ["undercut", ["undercut"], 3],
      [null, ["spatter", "surface-porosity", "overlap"], 4],
    ]);
    expect(rows[1]?.beadIds).toEqual(["a", "d", "b", "c"]);
    expect(pareto(imperfectionTallies(beads), { most: 3 }).rows.map(({ key }) => key)).not.toContain(null);
  });

  it("counts confirmed causes only where there is one", () => {
    expect(pareto(causeTallies(beads)).rows.map(({ key, count }) => [key, count])).toEqual([
      ["travel-fast", 2],
      ["travel-slow", 1],
    ]);
    expect(pareto([])).toEqual({ total: 0, rows: [] });
  });

  it("descends, ends at the whole, loses no tally, and does not depend on the order of unequal counts", () => {
    const tally = fc.record({
      key: fc.constantFrom("p", "q", "r", "s", "t"),
      beadId: fc.constantFrom("1", "2", "3"),
    });
    fc.assert(
      fc.property(fc.array(tally, { maxLength: 40 }), fc.integer({ min: 0, max: 6 }), (tallies, most) => {
        const { rows, total } = pareto(tallies, { most });
        const heads = rows.filter(({ key }) => key !== null).map(({ count }) => count);
        expect(heads).toEqual([...heads].sort((a, b) => b - a));
        expect(rows.reduce((sum, { count }) => sum + count, 0)).toBe(total);
        if (rows.length > 0) expect(rows.at(-1)?.cumulative).toMatchObject({ count: total, of: total });
        expect(rows.flatMap(({ keys }) => keys).sort()).toEqual(
          [...new Set(tallies.map(({ key }) => key))].sort(),
        );
        const counts = (all: typeof rows) => all.map(({ count }) => count);
        expect(counts(pareto([...tallies].reverse(), { most }).rows)).toEqual(counts(rows));
      }),
    );
  });
});
