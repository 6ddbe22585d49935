import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { courseThrough } from "@/lib/trace/course";
import { photoPlace, sampleStrip } from "@/lib/trace/lay-strip";
import { STRIP } from "@/lib/trace";

/** A picture whose red is the place along x and whose green is the place along y: bilinear sampling gives both exactly. */
const [width, height] = [240, 200];
const data = new Uint8ClampedArray(4 * width * height).fill(255);
for (let y = 0; y < height; y++)
  for (let x = 0; x < width; x++) {
    data[4 * (y * width + x)] = x + 0.5;
    data[4 * (y * width + x) + 1] = y + 0.5;
  }
const ramp = { width, height, data: Array.from(data) as unknown as Uint8ClampedArray };
for (let y = 0; y < height; y++)
  for (let x = 0; x < width; x++) {
    (ramp.data as unknown as number[])[4 * (y * width + x)] = x + 0.5;
    (ramp.data as unknown as number[])[4 * (y * width + x) + 1] = y + 0.5;
  }

describe("a strip laid on a photo", () => {
  it("holds at each place what the photo has there, whichever way it lies and bends", () => {
    const place = fc.record({
      x: fc.double({ min: 70, max: 170, noNaN: true }),
      y: fc.double({ min: 70, max: 130, noNaN: true }),
    });
    fc.assert(
      fc.property(place, place, fc.double({ min: -12, max: 12, noNaN: true }), (a, b, bow) => {
        fc.pre(Math.hypot(a.x - b.x, a.y - b.y) > 20);
        const course = courseThrough([a, b])!;
        const bendPx = Float64Array.from({ length: STRIP.columns }, (_, i) => bow * Math.sin(i / 150));
        const lay = { course, spanPx: 40, bendPx };
        const { planes, onPhoto } = sampleStrip(ramp, lay);
        expect(onPhoto).toBe(1);
        for (const [column, row] of [
          [0, 0],
          [100, 20],
          [384, 128],
          [700, 250],
        ] as const) {
          const k = row * STRIP.columns + column;
          const at = photoPlace(lay, column + 0.5, row + 0.5);
          expect(planes[k]! * 255).toBeCloseTo(at.x, 1);
          expect(planes[STRIP.rows * STRIP.columns + k]! * 255).toBeCloseTo(at.y, 1);
        }
      }),
      { seed: 3, numRuns: 8 },
    );
  });

  it("says how much of it lies off the photo", () => {
    const course = courseThrough([
      { x: 60, y: 0 },
      { x: 180, y: 0 },
    ])!;
    const { onPhoto } = sampleStrip(ramp, { course, spanPx: 80, bendPx: new Float64Array(0) });
    expect(onPhoto).toBeCloseTo(0.5, 1);
  });
});
