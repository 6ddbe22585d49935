import { describe, expect, it } from "vitest";
import { markerCorners, stripLayout, stripMarkerIds } from "@/lib/strip";

describe("stripLayout", () => {
  const layout = stripLayout();

  it("keeps all ink on the strip, clear of its edges", () => {
    for (const { x, y, width, height } of layout.ink) {
      expect(x).toBeGreaterThanOrEqual(2);
      expect(y).toBeGreaterThanOrEqual(2);
      expect(x + width).toBeLessThanOrEqual(layout.lengthMm - 2);
      expect(y + height).toBeLessThanOrEqual(layout.widthMm - 2);
    }
  });

  it("gives every marker a dark ring of its stated size and a quiet zone of a module", () => {
    for (const id of stripMarkerIds) {
      const [a, , c] = markerCorners(id)!;
      const own = layout.ink.filter((r) => r.x >= a!.x - 1e-9 && r.x + r.width <= c!.x + 1e-9);
      expect(Math.min(...own.map((r) => r.x))).toBeCloseTo(a!.x, 9);
      expect(Math.max(...own.map((r) => r.y + r.height))).toBeCloseTo(c!.y, 9);
      const near = layout.ink.filter((r) => r.x + r.width > a!.x - 2 + 1e-9 && r.x < c!.x + 2 - 1e-9);
      expect(near.length).toBe(own.length);
    }
  });

  it("rules in both units: ticks of a millimetre and of an eighth of an inch (25.4 mm, exact by definition)", () => {
    const middle = (r: { x: number; width: number }): number => r.x + r.width / 2;
    const ticks = layout.ink.filter((r) => r.width < 0.2);
    const low = ticks.filter((r) => r.y > 11).map(middle);
    const high = ticks.filter((r) => r.y === 3).map(middle);
    expect(low).toHaveLength(71);
    expect(low[70]! - low[0]!).toBeCloseTo(70, 9);
    expect(high[16]! - high[0]!).toBeCloseTo(50.8, 9);
  });

  it("has a bar to check the printer by in each unit", () => {
    expect(layout.checkBars.map(({ rect, nominalMm }) => rect.width - nominalMm)).toEqual([0, 0]);
    expect(layout.checkBars.map(({ nominalMm }) => nominalMm)).toEqual([100, 4 * 25.4]);
  });

  it("answers null for a marker that is not on the strip", () => {
    expect(markerCorners(77)).toBeNull();
  });
});
