import { describe, expect, it } from "vitest";
import { laidTransform, type LaidTransform } from "@/components/report/laid-transform";
import { VIEW_WIDTH } from "@/lib/assess";
import { applyHomography, type Homography, type Point } from "@/lib/geometry";

/** What a browser makes of it: CSS Transforms Module Level 2, "perspective()" divides by 1 - z / d. */
function drawn({ origin, shift, linear, depth }: LaidTransform, point: Point): Point {
  const [x, y] = [point.x - origin[0], point.y - origin[1]];
  const z = depth[0] * x + depth[1] * y;
  const w = 1 - z / VIEW_WIDTH;
  return {
    x: (linear[0] * x + linear[1] * y) / w + shift[0] + origin[0],
    y: (linear[2] * x + linear[3] * y) / w + shift[1] + origin[1],
  };
}

const maps: readonly (readonly [string, Homography])[] = [
  ["shown whole", [0.25, 0, 0, 0, 0.25, 0, 0, 0, 1]],
  ["turned and enlarged", [0.3, -0.4, 700, 0.4, 0.3, -600, 0, 0, 1]],
  ["laid flat", [0.3, -0.1, 20, 0.05, 0.5, -400, 4e-5, -6e-5, 1]],
  ["laid flat, its first corner behind the horizon", [0.3, -0.1, 20, 0.05, 0.5, -400, 1e-3, 1e-3, -0.4]],
];

describe("the transform of a laid photo", () => {
  it.each(maps)("draws each pixel where the map says: %s", (_, toView) => {
    const transform = laidTransform(toView, 4000, 500);
    for (const pixel of [
      { x: 1900, y: 1400 },
      { x: 2600, y: 1000 },
      { x: 1500, y: 2100 },
    ]) {
      const asked = applyHomography(toView, pixel);
      // The image is VIEW_WIDTH units wide before it is transformed.
      const got = drawn(transform, { x: (pixel.x / 4000) * VIEW_WIDTH, y: (pixel.y / 4000) * VIEW_WIDTH });
      expect(got.x).toBeCloseTo(asked.x, 6);
      expect(got.y).toBeCloseTo(asked.y, 6);
    }
  });
});
