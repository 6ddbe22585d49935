import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { simplifyPath } from "@/lib/marks";
import { arbPoint } from "../../arbitraries";

const path = fc.array(arbPoint, { minLength: 2, maxLength: 60 });

function distance(p: { x: number; y: number }, a: { x: number; y: number }, b: { x: number; y: number }) {
  // By brute force along the segment, so that the check shares no formula with the code.
  const steps = Array.from({ length: 2001 }, (_, i) => i / 2000);
  return Math.min(...steps.map((t) => Math.hypot(p.x - a.x - t * (b.x - a.x), p.y - a.y - t * (b.y - a.y))));
}

describe("simplifyPath", () => {
  test("a straight run keeps its two ends", () => {
    const run = [0, 3, 7, 20, 41].map((x) => ({ x, y: 2 * x + 5 }));
    expect(simplifyPath(run, 0.01)).toEqual([run[0], run[4]]);
  });

  test("a corner stays", () => {
    const corner = [
      { x: 0, y: 0 },
      { x: 50, y: 1 },
      { x: 100, y: 0 },
      { x: 101, y: 80 },
    ];
    expect(simplifyPath(corner, 3)).toEqual([corner[0], corner[2], corner[3]]);
  });

  test("what is kept is part of the path, in order, ends included", () => {
    fc.assert(
      fc.property(path, fc.integer({ min: 1, max: 300 }), (points, tolerance) => {
        const kept = simplifyPath(points, tolerance);
        expect(kept[0]).toBe(points[0]);
        expect(kept.at(-1)).toBe(points.at(-1));
        const places = kept.map((p) => points.indexOf(p));
        expect(places).toEqual([...places].sort((a, b) => a - b));
      }),
    );
  });

  test("no point left out lies farther from its kept segment than the tolerance", () => {
    fc.assert(
      fc.property(path, fc.integer({ min: 20, max: 800 }), (points, tolerance) => {
        const kept = simplifyPath(points, tolerance);
        kept.slice(1).forEach((b, i) => {
          const a = kept[i]!;
          for (const p of points.slice(points.indexOf(a) + 1, points.indexOf(b))) {
            // Half a step of the brute force along the longest segment possible here.
            expect(distance(p, a, b)).toBeLessThanOrEqual(tolerance + 3);
          }
        });
      }),
      { numRuns: 40 },
    );
  });
});
