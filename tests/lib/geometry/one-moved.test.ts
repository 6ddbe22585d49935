import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  areaMoved,
  crossesItself,
  extentMoved,
  greatestExtent,
  polygonArea,
  polylineLength,
  polylineMoved,
  type OneMoved,
  type Point,
} from "@/lib/geometry";
import { segmentsTouch } from "@/lib/geometry/polygon";

const at = fc.integer({ min: -50, max: 50 });
/** Whole numbers, so that points coincide, lie in a line and lie on each other's parallels often. */
const point = fc.record({ x: at, y: at });
const points = fc.array(point, { minLength: 2, maxLength: 24 });

function plainExtent(list: readonly Point[]): number {
  let most = 0;
  for (const a of list) for (const b of list) most = Math.max(most, Math.hypot(a.x - b.x, a.y - b.y));
  return most;
}

const figures: Readonly<
  Record<string, [(list: readonly Point[]) => OneMoved, (list: readonly Point[]) => number]>
> = {
  "length of a line": [polylineMoved, polylineLength],
  "area of a ring": [areaMoved, polygonArea],
  "greatest extent": [extentMoved, plainExtent],
};

describe("a figure with one point moved", () => {
  it.each(Object.entries(figures))("is the figure worked out again: %s", (_, [moved, plain]) => {
    fc.assert(
      fc.property(points, fc.nat(), point, (list, which, to) => {
        const index = which % list.length;
        const found = moved(list);
        expect(found.value).toBeCloseTo(plain(list), 9);
        expect(found.at(index, to)).toBeCloseTo(plain(list.with(index, to)), 9);
        // Asked twice it still says the same.
        expect(found.at(index, list[index]!)).toBeCloseTo(plain(list), 9);
      }),
      { numRuns: 2000, seed: 20261126 },
    );
  });

  it("is exact on a regular polygon of 500 corners: its diameter by the closed form 2 r", () => {
    const ring = Array.from({ length: 500 }, (_, i) => ({
      x: 40 * Math.cos((2 * Math.PI * i) / 500),
      y: 40 * Math.sin((2 * Math.PI * i) / 500),
    }));
    expect(greatestExtent(ring)).toBeCloseTo(80, 9);
    // A corner pulled straight outwards by 1 lies 81 from the one across.
    expect(extentMoved(ring).at(0, { x: 41, y: 0 })).toBeCloseTo(81, 9);
  });
});

describe("whether a ring crosses itself", () => {
  /** The definition: every pair of sides that are not neighbours. */
  function plainly(ring: readonly Point[]): boolean {
    const n = ring.length;
    return ring.some((a, i) =>
      ring.some(
        (c, j) =>
          j >= i + 2 &&
          !(i === 0 && j === n - 1) &&
          segmentsTouch(a, ring[(i + 1) % n]!, c, ring[(j + 1) % n]!),
      ),
    );
  }

  it("is what comparing every side with every other says", () => {
    const small = fc.record({ x: fc.integer({ min: 0, max: 9 }), y: fc.integer({ min: 0, max: 9 }) });
    const seen = { yes: 0, no: 0 };
    fc.assert(
      fc.property(fc.array(small, { minLength: 3, maxLength: 9 }), (ring) => {
        const crosses = plainly(ring);
        seen[crosses ? "yes" : "no"] += 1;
        expect(crossesItself(ring)).toBe(crosses);
      }),
      { numRuns: 3000, seed: 20261126 },
    );
    expect(Math.min(seen.yes, seen.no)).toBeGreaterThan(200);
  });
});
