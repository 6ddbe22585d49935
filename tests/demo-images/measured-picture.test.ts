import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";
import { renderScene, type RenderedScene } from "@/demo-images";
import { stripMarkerIds } from "@/lib/strip";
import { darkRegion, greyAt, halfCrossing, pixelsInside, polygonArea, throughHomography } from "./picture";

/* Everything here is found in the pixels; the truth file is only what the finding is compared with. */

const distance = (a: readonly [number, number], b: readonly [number, number]): number =>
  Math.hypot(a[0] - b[0], a[1] - b[1]);

describe("a marker's corner is found where the truth puts it", () => {
  const { AR } = createRequire(import.meta.url)("js-aruco2") as {
    AR: {
      Detector: new (o: object) => {
        detect(i: object): { id: number; corners: { x: number; y: number }[] }[];
      };
    };
  };
  const detector = new AR.Detector({ dictionaryName: "ARUCO_MIP_36h12" });
  const rgba = (p: RenderedScene): Uint8ClampedArray => {
    const out = new Uint8ClampedArray(4 * p.width * p.height).fill(255);
    for (let k = 0; k < p.width * p.height; k++)
      for (let c = 0; c < 3; c++) out[4 * k + c] = p.rgb[3 * k + c]!;
    return out;
  };

  it.each([0, 24])("at %d degrees of tilt the library reads both markers and their corners", (tiltDeg) => {
    const picture = renderScene({
      scenario: "gas-marks-wormholes",
      megapixels: 0.6,
      quality: "exact-draft",
      tiltDeg,
      fieldWidthMm: 140,
      seed: 3,
    });
    const ids = stripMarkerIds;
    // Seen large, a marker's own inner squares can read as some other id; the strip's ids are what is looked for.
    const found = detector
      .detect({ width: picture.width, height: picture.height, data: rgba(picture) })
      .filter((marker) => ids.includes(marker.id));
    expect(found.map((marker) => marker.id).sort()).toEqual(ids);
    for (const marker of found) {
      marker.corners.forEach((corner, i) => {
        const truth = picture.truth.scaleObject!.keyPoints.find(
          (point) => point.name === `marker ${marker.id} corner ${i}`,
        )!;
        // The library names the outermost dark pixel by its index, unrefined: up to a pixel along each axis, and half.
        expect(distance([corner.x + 0.5, corner.y + 0.5], truth.px)).toBeLessThan(1.5 * Math.SQRT2);
      });
    }
  });

  it("crosses the edge of the marker within half a pixel of the projected edge", () => {
    const picture = renderScene({
      scenario: "gas-marks-wormholes",
      megapixels: 0.6,
      quality: "exact-draft",
      seed: 5,
      distortion: 0.06,
      tiltDeg: 20,
    });
    const points = picture.truth.scaleObject!.keyPoints;
    const errors: number[] = [];
    for (const id of [0, 1]) {
      const [a, b, c, d] = [0, 1, 2, 3].map(
        (i) => points.find((p) => p.name === `marker ${id} corner ${i}`)!.px,
      );
      for (const [from, to, inner] of [
        [a, b, d],
        [b, c, a],
        [c, d, b],
        [d, a, c],
      ] as const) {
        const middle = [(from![0] + to![0]) / 2, (from![1] + to![1]) / 2] as const;
        const side = distance(to!, inner!) || 1;
        const normal = [-(to![1] - from![1]), to![0] - from![0]] as const;
        const length = Math.hypot(...normal);
        expect(side).toBeGreaterThan(5);
        const profile = Array.from({ length: 61 }, (_, i) => {
          const t = (i - 30) / 10;
          // Half-way is meant in light, not in code values: undo the sRGB transfer (IEC 61966-2-1).
          return (
            (greyAt(picture, middle[0] + (normal[0] / length) * t, middle[1] + (normal[1] / length) * t) /
              255) **
            2.2
          );
        });
        errors.push(Math.abs((halfCrossing(profile) - 30) / 10));
      }
    }
    expect(errors).toHaveLength(8);
    expect(Math.max(...errors)).toBeLessThan(0.5);
  });
});

describe("a steel rule's ticks are found at their true pitch", () => {
  it("shows 1 mm and 1/16 inch (25.4 mm / 16, the international inch of 1959) by their strongest repeat", () => {
    const picture = renderScene({
      scenario: "stringer-ropey",
      megapixels: 1,
      quality: "exact-draft",
      seed: 2,
      tiltDeg: 0,
      fieldWidthMm: 122,
      distortion: 0,
    });
    const object = picture.truth.scaleObject!;
    const [first, last] = [object.keyPoints[1]!, object.keyPoints[8]!];
    const perMm = distance(first.px, last.px) / 70;
    const across = [
      (last.px[1] - first.px[1]) / distance(first.px, last.px),
      -(last.px[0] - first.px[0]) / distance(first.px, last.px),
    ];
    const readLine = (offsetMm: number): number[] =>
      Array.from({ length: 2801 }, (_, i) => {
        const t = i / 2800;
        return greyAt(
          picture,
          first.px[0] + (last.px[0] - first.px[0]) * t + across[0]! * offsetMm * perMm,
          first.px[1] + (last.px[1] - first.px[1]) * t + across[1]! * offsetMm * perMm,
        );
      });
    // Strength of a repeating darkness of the given pitch, by its Fourier coefficient.
    const strength = (line: readonly number[], pitchMm: number): number => {
      let [re, im] = [0, 0];
      line.forEach((level, i) => {
        const phase = (2 * Math.PI * (i / 2800) * 70) / pitchMm;
        re += level * Math.cos(phase);
        im += level * Math.sin(phase);
      });
      return Math.hypot(re, im);
    };
    const bestPitch = (line: readonly number[], around: number): number => {
      const candidates = Array.from({ length: 161 }, (_, i) => around * (0.96 + i * 0.0005));
      return candidates.reduce((best, pitch) =>
        strength(line, pitch) > strength(line, best) ? pitch : best,
      );
    };
    expect(bestPitch(readLine(1.5), 1.01)).toBeCloseTo(1, 2);
    expect(bestPitch(readLine(17.6), 1.6)).toBeCloseTo(25.4 / 16, 2);
  });
});

describe("a card of ISO/IEC 7810 ID-1 size has its edges where the truth says", () => {
  it("keeps 85.60 x 53.98 mm (from memory) between its corners through the top plane's homography", () => {
    const picture = renderScene({
      scenario: "tee-hollow-undersized",
      megapixels: 0.3,
      quality: "exact-draft",
      seed: 4,
      distortion: 0,
    });
    const object = picture.truth.scaleObject!;
    const corners = object.keyPoints.map((point) => point.planeMm);
    expect(distance(corners[0]!, corners[1]!)).toBeCloseTo(85.6, 3);
    expect(distance(corners[1]!, corners[2]!)).toBeCloseTo(53.98, 3);
    for (const point of object.keyPoints) {
      expect(distance(throughHomography(object.topToImage, ...point.planeMm), point.px)).toBeLessThan(0.02);
    }
  });
});

describe("a rendered pore covers the area its truth states", () => {
  it("counts the dark pixels that hang together with the middle of each larger pore", () => {
    const picture = renderScene({
      scenario: "tee-porosity-soot",
      megapixels: 1,
      quality: "exact-draft",
      seed: 7,
      fieldWidthMm: 96,
      lighting: "overhead",
    });
    const pores = picture.truth.imperfections.filter(
      (mark) => mark.kind === "surface-porosity" && mark.sizes.diameterMm! > 1,
    );
    expect(pores.length).toBeGreaterThan(4);
    const ratios = pores.map((pore) => {
      const [cx, cy] = [0, 1].map(
        (i) => pore.outlinePx.reduce((sum, p) => sum + p[i as 0 | 1], 0) / pore.outlinePx.length,
      );
      const wide = pore.outlinePx.map(([x, y]) => [cx! + (x - cx!) * 1.5, cy! + (y - cy!) * 1.5] as const);
      const levels = pixelsInside(wide).map(([x, y]) => greyAt(picture, x, y));
      const floor = greyAt(picture, cx!, cy!);
      const face = levels.toSorted((a, b) => a - b)[Math.floor(levels.length * 0.8)]!;
      expect(face - floor).toBeGreaterThan(25);
      return darkRegion(picture, [cx!, cy!], (floor + face) / 2, wide) / polygonArea(pore.outlinePx);
    });
    const median = ratios.toSorted((a, b) => a - b)[ratios.length >> 1]!;
    // Half-way between floor and face falls a little inside or outside the rim with the light: a fifth of the area.
    expect(median).toBeGreaterThan(0.8);
    expect(median).toBeLessThan(1.2);
  });
});
