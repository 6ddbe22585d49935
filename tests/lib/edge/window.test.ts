import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { windowFor } from "@/lib/edge";
import { cellAt, middleOf, MOST_PIXELS } from "@/lib/edge/window";

const photo = { widthPx: 4000, heightPx: 3000 };
const place = fc.record({ x: fc.integer({ min: 0, max: 4000 }), y: fc.integer({ min: 0, max: 3000 }) });
const finest = fc.constantFrom(0.1, 1, 2.5, 6);

describe("the window of a search", () => {
  test("is bounded, holds both points and lies on the photo", () => {
    fc.assert(
      fc.property(place, place, finest, (a, b, finestPx) => {
        const window = windowFor(a, b, photo, finestPx);
        if (window === null) return expect(a).toEqual(b);
        const { corner, stepPx, columns, rows } = window;
        expect(Math.max(columns, rows)).toBeLessThanOrEqual(MOST_PIXELS);
        expect(stepPx).toBeGreaterThanOrEqual(finestPx);
        expect(Math.min(corner.x, corner.y)).toBeGreaterThanOrEqual(0);
        expect(corner.x + columns * stepPx).toBeLessThanOrEqual(photo.widthPx + 1e-6);
        expect(corner.y + rows * stepPx).toBeLessThanOrEqual(photo.heightPx + 1e-6);
        for (const point of [a, b]) {
          const middle = middleOf(window, cellAt(window, point));
          expect(Math.abs(middle.x - point.x)).toBeLessThanOrEqual(1.5 * stepPx);
          expect(Math.abs(middle.y - point.y)).toBeLessThanOrEqual(1.5 * stepPx);
        }
      }),
      { seed: 5, numRuns: 300 },
    );
  });

  test("is the same from either end", () => {
    fc.assert(
      fc.property(place, place, finest, (a, b, finestPx) => {
        expect(windowFor(a, b, photo, finestPx)).toEqual(windowFor(b, a, photo, finestPx));
      }),
      { seed: 6, numRuns: 100 },
    );
  });

  test("there is none off the photo", () => {
    expect(windowFor({ x: -1, y: 5 }, { x: 50, y: 50 }, photo, 1)).toBeNull();
    expect(windowFor({ x: 10, y: 5 }, { x: 50, y: 3001 }, photo, 1)).toBeNull();
  });
});
