import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";
import { renderScene, type Pixel, type RenderedScene } from "@/demo-images";
import { stripMarkerIds } from "@/lib/strip";
import { distance, edgeProfile, halfCrossing, STEPS_PER_PX } from "./picture";

/* Everything here is found in the pixels; the truth file is only what the finding is compared with. */

const { AR } = createRequire(import.meta.url)("js-aruco2") as {
  AR: {
    Detector: new (o: object) => {
      detect(i: object): { id: number; corners: { x: number; y: number }[] }[];
    };
  };
};

function rgba(picture: RenderedScene): Uint8ClampedArray {
  const out = new Uint8ClampedArray(4 * picture.width * picture.height).fill(255);
  for (let k = 0; k < picture.width * picture.height; k++)
    for (let c = 0; c < 3; c++) out[4 * k + c] = picture.rgb[3 * k + c]!;
  return out;
}

const cornerPx = (picture: RenderedScene, id: number, i: number): Pixel =>
  picture.truth.scaleObject!.keyPoints.find((point) => point.name === `marker ${id} corner ${i}`)!.px;

const draft = { scenario: "gas-marks-wormholes", megapixels: 0.6, quality: "exact-draft" } as const;

describe("a marker's corner is found where the truth puts it", () => {
  const detector = new AR.Detector({ dictionaryName: "ARUCO_MIP_36h12" });

  it.each([0, 24])("at %d degrees of tilt the library reads both markers and their corners", (tiltDeg) => {
    const picture = renderScene({ ...draft, tiltDeg, fieldWidthMm: 140, seed: 3 });
    // Seen large, a marker's own inner squares can read as some other id; the strip's ids are what is looked for.
    const found = detector
      .detect({ width: picture.width, height: picture.height, data: rgba(picture) })
      .filter((marker) => stripMarkerIds.includes(marker.id));
    expect(found.map((marker) => marker.id).sort()).toEqual(stripMarkerIds);
    for (const marker of found)
      marker.corners.forEach(({ x, y }, i) => {
        // The library names the outermost dark pixel by its index, unrefined: up to a pixel along each axis, and half.
        expect(distance([x + 0.5, y + 0.5], cornerPx(picture, marker.id, i))).toBeLessThan(1.5 * Math.SQRT2);
      });
  });

  it("crosses the edge of the marker within half a pixel of the projected edge", () => {
    const picture = renderScene({ ...draft, seed: 5, distortion: 0.06, tiltDeg: 20 });
    const offs = stripMarkerIds.flatMap((id) =>
      [0, 1, 2, 3].map((i) => {
        const [a, b, inner] = [0, 1, 2].map((n) => cornerPx(picture, id, (i + n) % 4)) as [
          Pixel,
          Pixel,
          Pixel,
        ];
        const outward: Pixel = [2 * a[0] - inner[0], 2 * a[1] - inner[1]];
        return Math.abs(halfCrossing(edgeProfile(picture, a, b, outward, [0.5], 3)) / STEPS_PER_PX - 3);
      }),
    );
    expect(offs).toHaveLength(8);
    expect(Math.max(...offs)).toBeLessThan(0.5);
  });
});
