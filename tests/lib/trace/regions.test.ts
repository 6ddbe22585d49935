import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { courseOfRegion, regionsOf } from "@/lib/trace/regions";
import { SQUARE } from "@/lib/trace/square";

const { answer } = SQUARE;

/** A map that is sure of a bar about (x, y), so long and wide and turned, and of nothing else. */
function bars(...all: readonly { x: number; y: number; long: number; wide: number; turn: number }[]) {
  return Float32Array.from({ length: answer * answer }, (_, k) => {
    const [px, py] = [(k % answer) + 0.5, Math.floor(k / answer) + 0.5];
    const inside = all.some(({ x, y, long, wide, turn }) => {
      const [dx, dy] = [px - x, py - y];
      const u = dx * Math.cos(turn) + dy * Math.sin(turn);
      const v = dy * Math.cos(turn) - dx * Math.sin(turn);
      return Math.abs(u) <= long / 2 && Math.abs(v) <= wide / 2;
    });
    return inside ? 4 : -4;
  });
}

describe("regions of the finder's map", () => {
  it("give a bar's ends, length and width within a cell or so, however it lies", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 80, noNaN: true }),
        fc.double({ min: 6, max: 14, noNaN: true }),
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        (long, wide, turn) => {
          const [region, ...others] = regionsOf(bars({ x: 64, y: 64, long, wide, turn }), 10);
          expect(others).toEqual([]);
          const { middle, length, width } = courseOfRegion(region!);
          // A turned bar's corner cells lie out beyond its ends by up to a cell or two.
          expect(Math.abs(length - long)).toBeLessThan(3.2);
          expect(Math.abs(width / wide - 1)).toBeLessThan(0.15);
          for (const end of [middle[0]!, middle[middle.length - 1]!]) {
            const far = Math.hypot(end.x - 64, end.y - 64);
            expect(Math.abs(far - long / 2)).toBeLessThan(3);
          }
        },
      ),
      { seed: 9, numRuns: 60 },
    );
  });

  it("are counted apart, the largest first, and specks are left out", () => {
    const map = bars(
      { x: 40, y: 30, long: 40, wide: 8, turn: 0 },
      { x: 70, y: 90, long: 70, wide: 10, turn: 0.2 },
      { x: 100, y: 20, long: 3, wide: 2, turn: 0 },
    );
    const found = regionsOf(map, 10);
    expect(found).toHaveLength(2);
    expect(found[0]!.cells.length).toBeGreaterThan(found[1]!.cells.length);
    expect(found[0]!.share).toBeCloseTo(1 / (1 + Math.exp(-4)), 9);
  });
});
