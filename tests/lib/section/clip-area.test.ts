import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { polygonArea } from "@/lib/geometry";
import { clippedArea } from "@/lib/section/clip-area";

const square = [
  { x: 0, y: 0 },
  { x: 4, y: 0 },
  { x: 4, y: 4 },
  { x: 0, y: 4 },
];
/** A U whose cut at y > 1 falls into two arms. */
const u = [
  { x: 0, y: 0 },
  { x: 3, y: 0 },
  { x: 3, y: 3 },
  { x: 2, y: 3 },
  { x: 2, y: 1 },
  { x: 1, y: 1 },
  { x: 1, y: 3 },
  { x: 0, y: 3 },
];
const above = (y: number) => ({ through: { x: 0, y }, normal: { x: 0, y: 1 } });

describe("the area inside half-planes", () => {
  it("of a square: half, quarter, triangle, none, all", () => {
    expect(clippedArea(square, [above(2)])).toBeCloseTo(8, 12);
    expect(clippedArea(square, [above(2), { through: { x: 2, y: 0 }, normal: { x: 1, y: 0 } }])).toBeCloseTo(
      4,
      12,
    );
    expect(clippedArea(square, [{ through: { x: 0, y: 0 }, normal: { x: 1, y: -1 } }])).toBeCloseTo(8, 12);
    expect(clippedArea(square, [above(5)])).toBe(0);
    expect(clippedArea(square, [above(-1)])).toBe(16);
  });

  it("of a ring that falls apart: both arms", () => {
    expect(clippedArea(u, [above(1.5)])).toBeCloseTo(2 * 1.5, 12);
  });

  it("on either side of any line adds up to the whole", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1, max: 4, noNaN: true }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        (at, turn) => {
          const normal = { x: Math.cos(turn), y: Math.sin(turn) };
          const through = { x: at, y: 1.3 };
          const back = { through, normal: { x: -normal.x, y: -normal.y } };
          expect(clippedArea(u, [{ through, normal }]) + clippedArea(u, [back])).toBeCloseTo(
            polygonArea(u),
            9,
          );
        },
      ),
      { numRuns: 300, seed: 1974 },
    );
  });
});
