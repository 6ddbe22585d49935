import { describe, expect, it } from "vitest";
import { renderScene, type Matrix3, type Pixel } from "@/demo-images";
import { polygonArea } from "./picture";

const small = { megapixels: 0.1, quality: "exact-draft", distortion: 0 } as const;

/** Plane millimetres of a pixel, by the inverse of a homography (Cramer's rule on its 3x3). */
function onPlane([a, b, c, d, e, f, g, h, i]: Matrix3, [x, y]: Pixel): readonly [number, number] {
  const u = (e * i - f * h) * x + (c * h - b * i) * y + (b * f - c * e);
  const v = (f * g - d * i) * x + (a * i - c * g) * y + (c * d - a * f);
  const w = (d * h - e * g) * x + (b * g - a * h) * y + (a * e - b * d);
  return [u / w, v / w];
}

describe("outlines follow the surface they lie on", () => {
  it("spatter on either plate of a T-joint has its true area in that plate's millimetres, drawn out neither way", () => {
    const { truth } = renderScene({ ...small, scenario: "tee-toes-slag", seed: 7 });
    const balls = truth.imperfections.filter((one) => one.kind === "spatter" && one.place === "beside");
    expect(balls.length).toBeGreaterThan(10);
    for (const plane of truth.planes) {
      const drops = balls.map(({ outlinePx, sizes }) => {
        const ring = outlinePx.map((px) => onPlane(plane.planeToImage, px));
        const span = (i: 0 | 1): number =>
          Math.max(...ring.map((p) => p[i])) - Math.min(...ring.map((p) => p[i]));
        const v = ring.reduce((sum, p) => sum + p[1], 0) / ring.length;
        const diameter = Math.sqrt((4 / Math.PI) * polygonArea(ring));
        return { v, longer: span(0) / span(1), share: diameter / sizes.diameterMm!, size: sizes.diameterMm! };
      });
      // Clear of the bead, which hides the corner, and on this plate's side of the corner; pixels are rounded to 0.01.
      const here = drops.filter(({ v, size }) => (plane.name === "upright" ? v : -v) > 8 && size > 0.6);
      expect(here.length).toBeGreaterThan(1);
      // A ring of sixteen points lies a hundredth inside its curve; in plan the plate would squeeze each to 0.84 of it.
      for (const { share } of here) expect(Math.abs(share - 0.99)).toBeLessThan(0.05);
      const longer = here.reduce((sum, drop) => sum + Math.log(drop.longer), 0) / here.length;
      expect(Math.abs(longer)).toBeLessThan(0.15);
    }
  });

  it("nothing is said to lie where the scale object covers it", () => {
    const { truth } = renderScene({ ...small, scenario: "stainless-lap-spatter", seed: 7 });
    const corners = truth.scaleObject!.keyPoints.map(({ px }) => px);
    const inside = ([x, y]: Pixel): boolean =>
      corners.every(([ax, ay], i) => {
        const [bx, by] = corners[(i + 1) % 4]!;
        return (bx - ax) * (y - ay) - (by - ay) * (x - ax) < 0;
      });
    const [cx, cy] = [0, 1].map((i) => corners.reduce((sum, p) => sum + p[i as 0 | 1], 0) / 4);
    expect(inside([cx!, cy!])).toBe(true);
    const hidden = truth.imperfections.filter((one) => one.outlinePx.some(inside));
    expect(hidden.map((one) => one.kind)).toEqual([]);
  });
});
