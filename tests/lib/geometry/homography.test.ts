import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  applyHomography,
  fitHomography,
  homographyJacobian,
  horizonSide,
  invertHomography,
  multiplyHomography,
  type Point,
} from "@/lib/geometry";
import { anyPoint } from "./arbitraries";

const from: Point[] = [
  { x: 2, y: 2 },
  { x: 2, y: 4 },
  { x: 4, y: 4 },
  { x: 4, y: 2 },
];
const to: Point[] = [
  { x: 2, y: 2 },
  { x: 2.5, y: 4 },
  { x: 3.5, y: 3.5 },
  { x: 4, y: 2 },
];

describe("fitHomography", () => {
  it("agrees with a published worked example (course notebook after Hartley and Zisserman 4.1), unit norm, sign free", () => {
    const h = fitHomography(from, to)!;
    const norm = Math.hypot(...h);
    const sign = Math.sign(h[0]) === -1 ? 1 : -1;
    const published = [-0.22664, -0.17434, 0.62761, -0.06973, -0.33124, 0.62761, -0.03487, -0.06102, 0.1046];
    h.forEach((value, i) => expect(Math.abs((sign * value) / norm - published[i]!)).toBeLessThan(1e-5));
  });

  it("is exact in fractions: computed by hand for the same points", () => {
    const h = fitHomography(from, to)!;
    const exact = [-13 / 6, -5 / 3, 6, -2 / 3, -19 / 6, 6, -1 / 3, -7 / 12, 1];
    h.forEach((value, i) => expect(value).toBeCloseTo(exact[i]!, 9));
    const image = applyHomography(h, { x: 3, y: 3 });
    expect(image.x).toBeCloseTo(22 / 7, 9);
    expect(image.y).toBeCloseTo(22 / 7, 9);
  });

  it("refuses three points in a line, repeated points and fewer than four", () => {
    const line = [
      { x: 0, y: 0 },
      { x: 1, y: 1 },
      { x: 2, y: 2 },
      { x: 0, y: 5 },
    ];
    expect(fitHomography(line, to)).toBeNull();
    expect(fitHomography([from[0]!, from[0]!, from[1]!, from[2]!], to)).toBeNull();
    expect(fitHomography(from.slice(1), to.slice(1))).toBeNull();
  });

  it("undoes itself, composes, and has the Jacobian that differences show", () => {
    const h = fitHomography(from, to)!;
    const back = invertHomography(h)!;
    fc.assert(
      fc.property(anyPoint, (p) => {
        const near = { x: 2 + (p.x + 500) / 600, y: 2 + (p.y + 500) / 600 };
        const again = applyHomography(multiplyHomography(back, h), near);
        expect(again.x).toBeCloseTo(near.x, 9);
        expect(again.y).toBeCloseTo(near.y, 9);
        const e = 1e-6;
        const [a, b, c, d] = homographyJacobian(h, near);
        const dx = [
          applyHomography(h, { ...near, x: near.x + e }),
          applyHomography(h, { ...near, x: near.x - e }),
        ];
        const dy = [
          applyHomography(h, { ...near, y: near.y + e }),
          applyHomography(h, { ...near, y: near.y - e }),
        ];
        // Central differences with a step of 1e-6 are good to about 1e-7 here.
        expect(Math.abs(a - (dx[0]!.x - dx[1]!.x) / (2 * e))).toBeLessThan(1e-6 * (1 + Math.abs(a)));
        expect(Math.abs(c - (dx[0]!.y - dx[1]!.y) / (2 * e))).toBeLessThan(1e-6 * (1 + Math.abs(c)));
        expect(Math.abs(b - (dy[0]!.x - dy[1]!.x) / (2 * e))).toBeLessThan(1e-6 * (1 + Math.abs(b)));
        expect(Math.abs(d - (dy[0]!.y - dy[1]!.y) / (2 * e))).toBeLessThan(1e-6 * (1 + Math.abs(d)));
      }),
      { numRuns: 100, seed: 3 },
    );
  });

  it("tells the two sides of the horizon apart", () => {
    const h = fitHomography(from, to)!;
    expect(horizonSide(h, { x: 3, y: 3 })).toBe(horizonSide(h, { x: 3.5, y: 2.5 }));
    expect(horizonSide(h, { x: 3, y: 3 })).not.toBe(horizonSide(h, { x: -20, y: -20 }));
  });
});
