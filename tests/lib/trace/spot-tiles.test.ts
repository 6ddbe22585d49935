import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sampleTile, spotScale, TILE, tilesOver } from "@/lib/trace/spot-tiles";
import { isInZone, type BesideBead } from "@/lib/trace/spot-zone";
import type { Pixels } from "@/lib/trace";
import { inDepth } from "../../setup/in-depth";

const CORE = TILE.side - 2 * TILE.edge;
const share = fc.double({ min: 0, max: 1, noNaN: true });
const size = fc.integer({ min: 60, max: 1500 });

describe("tiles over a bead", () => {
  it("hold every place of the zone in the core of one tile and of no other", () => {
    fc.assert(
      fc.property(
        fc.record({ width: size, height: size, wide: fc.double({ min: 45, max: 700, noNaN: true }) }),
        // Where on the photo: anywhere, or just within the side of a core.
        fc.tuple(share, share, fc.boolean()),
        // How far off the middle of a straight bead that is and past its end, in widths: at the zone's very corner above all.
        fc.oneof(fc.constantFrom(-1.499, 1.499), fc.double({ min: -1.49, max: 1.49, noNaN: true })),
        fc.oneof(fc.constant(0.499), fc.double({ min: -3, max: 0.49, noNaN: true })),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        ({ width, height, wide }, [u, v, isSide], off, past, turn) => {
          const scale = spotScale(wide);
          const x = u * (width - 1);
          const at = {
            x: isSide ? (Math.floor((x * scale) / CORE) * CORE + 2) / scale : x,
            y: v * (height - 1),
          };
          const beside = (place: { x: number; y: number }): BesideBead => {
            const [dx, dy] = [(place.x - at.x) / wide, (place.y - at.y) / wide];
            const [c, s] = [Math.cos(turn), Math.sin(turn)];
            return { across: Math.abs(off + dx * c + dy * s), past: Math.max(0, past + dx * s - dy * c) };
          };
          expect(isInZone("spatter", beside(at))).toBe(true);
          const tiles = tilesOver({ width, height }, wide, beside);
          const holding = tiles.filter(
            ({ x, y }) =>
              at.x * scale >= x + TILE.edge &&
              at.x * scale < x + TILE.edge + CORE &&
              at.y * scale >= y + TILE.edge &&
              at.y * scale < y + TILE.edge + CORE,
          );
          expect(holding).toHaveLength(1);
        },
      ),
      {
        seed: 11,
        numRuns: inDepth(200, 6000),
        // A corner of the zone that reaches into a tile between the places that are asked.
        examples: [
          [{ width: 600, height: 600, wide: 45 }, [0.5, 132 / 599, true], 1.499, 0.499, Math.PI / 4],
        ],
      },
    );
  });

  it("leave out what is far from the bead", () => {
    const beside = ({ x, y }: { x: number; y: number }): BesideBead => ({
      across: Math.hypot(x - 100, y - 100) / 25,
      past: 0,
    });
    expect(tilesOver({ width: 2000, height: 1500 }, 50, beside)).toHaveLength(1);
  });
});

describe("a sampled tile", () => {
  /** Light that grows evenly to the right and down: sampled anywhere and averaged, it is what it is at the middle. */
  const ramp = (width: number, height: number): Pixels => {
    const data = new Uint8ClampedArray(4 * width * height);
    for (let k = 0; k < width * height; k++) {
      data[4 * k] = ((k % width) / width) * 250;
      data[4 * k + 1] = (Math.floor(k / width) / height) * 250;
      data[4 * k + 2] = 128;
    }
    return { width, height, data };
  };

  it.each([1, 0.5, 0.37])("shows the photo's own place under each of its pixels, scaled by %d", (scale) => {
    const image = ramp(900, 700);
    const planes = sampleTile(image, { x: 40, y: -20 }, scale);
    for (const [i, j] of [
      [3, 60],
      [120, 33],
      [180, 200],
    ] as const) {
      const [x, y] = [(40 + i + 0.5) / scale - 0.5, (-20 + j + 0.5) / scale - 0.5];
      const k = j * TILE.side + i;
      expect(planes[k]).toBeCloseTo(((x / 900) * 250) / 255, 2);
      expect(planes[TILE.side ** 2 + k]).toBeCloseTo(((y / 700) * 250) / 255, 2);
    }
    // Above the photo there is nothing.
    expect(planes[100]).toBe(0.5);
  });

  it("is read at the photo's own size where the bead is narrower than it was trained at", () => {
    expect(spotScale(80)).toBe(1);
    expect(spotScale(320)).toBe(0.5);
  });
});
