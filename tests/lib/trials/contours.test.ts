import { describe, expect, it } from "vitest";
import { contour } from "@/lib/trials";

const grid = (f: (x: number, y: number) => number | null) =>
  Array.from({ length: 21 }, (_, y) => Array.from({ length: 21 }, (_, x) => f(x - 10, y - 10)));

describe("contours on a grid", () => {
  it("lie on a straight line where the surface is a plane", () => {
    const pieces = contour(
      grid((x, y) => 2 * x + y),
      3.3,
    );
    expect(pieces.length).toBeGreaterThan(10);
    for (const [x1, y1, x2, y2] of pieces) {
      expect(2 * (x1 - 10) + (y1 - 10)).toBeCloseTo(3.3, 9);
      expect(2 * (x2 - 10) + (y2 - 10)).toBeCloseTo(3.3, 9);
    }
  });

  it("have about the length of a circle where the surface is a bowl", () => {
    const pieces = contour(
      grid((x, y) => Math.hypot(x, y)),
      7,
    );
    const length = pieces.reduce((sum, [x1, y1, x2, y2]) => sum + Math.hypot(x2 - x1, y2 - y1), 0);
    expect(Math.abs(length / (2 * Math.PI * 7) - 1)).toBeLessThan(0.02);
  });

  it("stop at what is not known, and are none where the level is not met", () => {
    const half = contour(
      grid((x, y) => (x < 0 ? null : Math.hypot(x, y))),
      7,
    );
    expect(half.every(([x1, , x2]) => x1 >= 10 && x2 >= 10)).toBe(true);
    expect(
      contour(
        grid(() => 1),
        2,
      ),
    ).toEqual([]);
  });
});
