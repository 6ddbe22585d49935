import { describe, expect, it } from "vitest";
import { distance, polylineLength } from "@/lib/geometry";
import { cornersOf, smoothPath } from "@/lib/section/smooth-path";

const onCircle = (deg: number) => ({
  x: 5 * Math.cos((deg * Math.PI) / 180),
  y: 5 * Math.sin((deg * Math.PI) / 180),
});

describe("a smooth path through picks", () => {
  it("keeps an arc of a circle, its ends too, far better than chords do", () => {
    const picks = [0, 20, 40, 60, 80].map(onCircle);
    const off = smoothPath(picks).map((point) => Math.abs(distance(point, { x: 0, y: 0 }) - 5));
    // A chord over 20 degrees is off by r (1 - cos 10 degrees) = 0.076.
    expect(Math.max(...off)).toBeLessThan(0.004);
  });

  it("goes through every pick", () => {
    const picks = [0, 15, 40, 50].map(onCircle);
    const path = smoothPath(picks);
    for (const pick of picks) expect(Math.min(...path.map((point) => distance(point, pick)))).toBe(0);
  });

  it("is straight between corners and keeps them", () => {
    const square = [
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 4, y: 3 },
    ];
    expect(cornersOf(square)).toEqual([true, true, true]);
    expect(polylineLength(smoothPath(square))).toBeCloseTo(7, 12);
  });

  it("is nothing for no picks, and itself for one", () => {
    expect(smoothPath([])).toEqual([]);
    expect(smoothPath([{ x: 1, y: 2 }])).toEqual([{ x: 1, y: 2 }]);
  });

  it("survives two picks in one place", () => {
    const path = smoothPath([onCircle(0), onCircle(20), onCircle(20), onCircle(40)]);
    expect(path.every(({ x, y }) => Number.isFinite(x) && Number.isFinite(y))).toBe(true);
  });
});
