import fc from "fast-check";
import { expect, it } from "vitest";
import type { Point } from "@/lib/geometry";
import { aspectOf } from "@/lib/sight/aspect";

const turn = fc.double({ min: -0.7, max: 0.7, noNaN: true });

/** A pinhole camera: a rectangle turned about two axes in front of it, by plain rotation and division. */
function seen(aspect: number, tilt: number, pan: number, focal: number): [Point, Point, Point, Point] {
  const at = (x: number, y: number): Point => {
    const [u, v, w] = [x * Math.cos(pan), y, -x * Math.sin(pan)];
    const [p, q, depth] = [
      u,
      v * Math.cos(tilt) - w * Math.sin(tilt),
      4 + v * Math.sin(tilt) + w * Math.cos(tilt),
    ];
    return { x: 500 + (focal * p) / depth, y: 400 + (focal * q) / depth };
  };
  const [a, b] = [aspect / 2, 0.5];
  return [at(-a, -b), at(a, -b), at(a, b), at(-a, b)];
}

it("gives the sides of a rectangle to one another back, however it lies to the camera", () => {
  fc.assert(
    fc.property(fc.double({ min: 0.5, max: 2.5, noNaN: true }), turn, turn, (aspect, tilt, pan) => {
      const quad = seen(aspect, tilt, pan, 900);
      expect(aspectOf(quad, { x: 500, y: 400 }, 900)).toBeCloseTo(aspect, 6);
    }),
    { seed: 4, numRuns: 100 },
  );
});
