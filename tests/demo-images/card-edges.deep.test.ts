import { describe, expect, it } from "vitest";
import { renderScene, renderTruth, type RenderedScene, type ScenarioName } from "@/demo-images";
import { edgeProfile, halfCrossing, STEPS_PER_PX, throughHomography } from "./picture";

/* The card's edges are found in the pixels; the truth file is only what the finding is compared with. */

/** ISO/IEC 7810 ID-1 (from memory). */
const ID1 = { lengthMm: 85.6, widthMm: 53.98 };

const REACH_PX = 5;
const [draft, photo] = ["exact-draft", "photo"] as const;

/**
 * How far each of the card's edges lies outside the projected one, px: where the light, mean along the edge's straight
 * part, has fallen half-way from the card's face to the dark line of its side and shadow. NaN where the plate beyond is
 * nearly as light as the card: a line between two lights, narrower than the lens draws it, has no half-way.
 */
function edgeErrors(picture: RenderedScene): number[] {
  const { keyPoints } = picture.truth.scaleObject!;
  const shares = Array.from({ length: 121 }, (_, i) => 0.15 + (0.7 * i) / 120);
  return [0, 1, 2, 3].map((i) => {
    const [a, b, c] = [0, 1, 2].map((n) => keyPoints[(i + n) % 4]!.px);
    const outward = [a![0] + b![0] - c![0], a![1] + b![1] - c![1]] as const;
    const profile = edgeProfile(picture, a!, b!, outward, shares, REACH_PX);
    if (profile[profile.length - 1]! > 0.6 * profile[0]!) return NaN;
    const near = profile.slice((REACH_PX - 3) * STEPS_PER_PX, (REACH_PX + 3) * STEPS_PER_PX);
    const dark = Math.min(...near);
    return halfCrossing(profile.slice(0, profile.indexOf(dark) + 1)) / STEPS_PER_PX - REACH_PX;
  });
}

/** Scenes on a T-joint, whose plate is seen at a slant, and how many of the card's edges stand out from it. */
const scenes: readonly (readonly [ScenarioName, number, number])[] = [
  ["tee-porosity-soot", 7, 4],
  ["tee-hollow-undersized", 3, 2],
];

describe("a card lies in the picture where its truth says", () => {
  it.each(scenes)(
    "on %s its edges lie within half a pixel of the projected ones",
    (scenario, seed, clear) => {
      for (const quality of [draft, photo]) {
        const errors = edgeErrors(renderScene({ scenario, seed, megapixels: 0.8, quality, distortion: 0 }));
        const seen = errors.filter((error) => !Number.isNaN(error));
        expect(seen.length).toBeGreaterThanOrEqual(clear);
        expect(Math.max(...seen.map(Math.abs))).toBeLessThan(0.5);
      }
    },
  );

  it("has ID-1 size between its corners, and the homography of its top lands on them", () => {
    const truth = renderTruth({ scenario: "tee-hollow-undersized", megapixels: 0.1, distortion: 0 });
    const { keyPoints, topToImage } = truth.scaleObject!;
    const side = (i: number, j: number): number =>
      Math.hypot(
        keyPoints[i]!.planeMm[0] - keyPoints[j]!.planeMm[0],
        keyPoints[i]!.planeMm[1] - keyPoints[j]!.planeMm[1],
      );
    expect(side(0, 1)).toBeCloseTo(ID1.lengthMm, 3);
    expect(side(1, 2)).toBeCloseTo(ID1.widthMm, 3);
    for (const { planeMm, px } of keyPoints) {
      const [x, y] = throughHomography(topToImage, ...planeMm);
      expect(Math.hypot(x - px[0], y - px[1])).toBeLessThan(0.02);
    }
  });
});
