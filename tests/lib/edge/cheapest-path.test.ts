import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { cheapestPath } from "@/lib/edge/cheapest-path";
import { edgeField } from "@/lib/edge/edge-field";
import { linkCosts, type LinkCost } from "@/lib/edge/link-cost";
import { inDepth } from "../../setup/in-depth";
import { anyPatch, straightCells } from "./pictures";

const runs = { seed: 14, numRuns: inDepth(60, 600) };

const costOf = (cells: readonly number[], cost: LinkCost): number =>
  cells.slice(1).reduce((sum, cell, i) => sum + cost(cells[i]!, cell), 0);

/** Dijkstra as it stands in the textbook: the nearest open place looked up in a plain array. */
function byBruteForce(columns: number, rows: number, start: number, end: number, cost: LinkCost): number {
  const best = Array.from({ length: columns * rows }, () => Infinity);
  const open = new Set(best.keys());
  best[start] = 0;
  while (open.size > 0) {
    const here = [...open].reduce((a, b) => (best[b]! < best[a]! ? b : a));
    open.delete(here);
    for (const next of open) {
      const [dx, dy] = [
        (next % columns) - (here % columns),
        Math.floor(next / columns) - Math.floor(here / columns),
      ];
      if (Math.abs(dx) <= 1 && Math.abs(dy) <= 1)
        best[next] = Math.min(best[next]!, best[here]! + cost(here, next));
    }
  }
  return best[end]!;
}

describe("the cheapest path", () => {
  test("costs what the textbook's search finds, and what its own steps add up to", () => {
    fc.assert(
      fc.property(anyPatch, ({ patch, start, end }) => {
        const cost = linkCosts(edgeField(patch), start, end);
        const path = cheapestPath(patch.columns, patch.rows, start, end, cost);
        expect(path.cost).toBeCloseTo(byBruteForce(patch.columns, patch.rows, start, end, cost), 9);
        expect(path.cost).toBeCloseTo(costOf(path.cells, cost), 9);
        expect([path.cells[0], path.cells.at(-1)]).toEqual([start, end]);
      }),
      { ...runs, numRuns: inDepth(25, 250) },
    );
  });

  test("never costs more than the straight line", () => {
    fc.assert(
      fc.property(anyPatch, ({ patch, start, end }) => {
        const cost = linkCosts(edgeField(patch), start, end);
        const straight = costOf(straightCells(patch.columns, start, end), cost);
        const path = cheapestPath(patch.columns, patch.rows, start, end, cost);
        expect(path.cost).toBeLessThanOrEqual(straight + 1e-9);
      }),
      runs,
    );
  });

  test("costs the same there and back", () => {
    fc.assert(
      fc.property(anyPatch, ({ patch, start, end }) => {
        const { columns, rows } = patch;
        const field = edgeField(patch);
        const there = cheapestPath(columns, rows, start, end, linkCosts(field, start, end));
        const back = cheapestPath(columns, rows, end, start, linkCosts(field, end, start));
        expect(back.cost).toBeCloseTo(there.cost, 9);
      }),
      runs,
    );
  });

  test("leads over neighbours only", () => {
    fc.assert(
      fc.property(anyPatch, ({ patch, start, end }) => {
        const { columns, rows } = patch;
        const { cells } = cheapestPath(columns, rows, start, end, linkCosts(edgeField(patch), start, end));
        for (const [i, cell] of cells.slice(1).entries()) {
          const from = cells[i]!;
          expect(Math.abs((cell % columns) - (from % columns))).toBeLessThanOrEqual(1);
          expect(Math.abs(Math.floor(cell / columns) - Math.floor(from / columns))).toBeLessThanOrEqual(1);
        }
      }),
      runs,
    );
  });
});
