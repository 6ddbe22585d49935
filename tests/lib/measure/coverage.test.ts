import { describe, expect, it } from "vitest";
import { calibrate, defaultMeasureOptions } from "@/lib/measure";
import { measureSpot } from "@/lib/measure/figures";
import type { Point } from "@/lib/geometry";
import { chance, normal, photograph, type Camera } from "./camera";
import { kinds, median, study } from "./study";
import { inDepth } from "../../setup/in-depth";

/** Photographs of each kind; three standard errors of a share of 95 % among so many. */
const PHOTOS = inDepth(150, 300);
const within = 3 * Math.sqrt((0.95 * 0.05) / PHOTOS);

/**
 * Picked at full size (one photo pixel per viewed pixel, as after zooming in): viewed smaller, the errors grow with it.
 * Does the stated 95 % interval hold the truth 95 times in 100? Simulated with a camera written apart from the room and
 * with every input drawn from the distribution the product states. Bounds: each kind is held to
 * three standard errors about 95 (300 photographs leave one of 1.3 %), and all together to 93 to 97 %.
 */
describe("coverage of the stated intervals", () => {
  const results = kinds.map((kind, index) => [kind, study(kind, PHOTOS, 1, 1000 + index)] as const);

  it.each(results)("%s: 95 of 100 intervals hold the truth, to three standard errors", (_, { inside }) => {
    expect(inside).toBeGreaterThan(0.95 - within);
    expect(inside).toBeLessThan(0.95 + within);
  });

  it("pooled: between 93 and 97 of 100", () => {
    const pooled = results.reduce((sum, [, { inside }]) => sum + inside, 0) / results.length;
    expect(pooled).toBeGreaterThan(0.93);
    expect(pooled).toBeLessThan(0.97);
  });

  // A disc leaves two tilts open and is read half way between: off by the same amount either way, which its interval
  // holds, but not without bias when, as here, it always lies on the same side of the photo. See disc-pose.test.ts.
  it.each(results.filter(([kind]) => kind !== "disc"))(
    "%s: no bias beyond three standard errors of the mean",
    (_, { errors }) => {
      const mean = errors.reduce((sum, one) => sum + one, 0) / errors.length;
      const spread = Math.sqrt(errors.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (errors.length - 1));
      expect(Math.abs(mean)).toBeLessThan((3 * spread) / Math.sqrt(errors.length));
    },
  );

  it.each(results.filter(([kind]) => kind === "edges" || kind === "rectangle" || kind === "strip"))(
    "%s: the median length error is at most 1 % or 0.15 mm",
    (_, { relative }) => {
      expect(median(relative)).toBeLessThanOrEqual(1);
    },
  );

  // The strip takes longest by far.
  it.each(kinds.filter((kind) => kind !== "disc" && (kind !== "strip" || inDepth(false, true))))(
    "%s: picked twice as badly, the interval visibly fails",
    (kind) => {
      expect(study(kind, 150, 2, 77).inside).toBeLessThan(0.9);
    },
  );

  it("holds for spots drawn from middle to rim", () => {
    const random = chance(5);
    const options = { ...defaultMeasureOptions, photo: { widthPx: 4000, heightPx: 3000 } };
    let inside = 0;
    for (let i = 0; i < 500; i++) {
      const camera: Camera = {
        widthPx: 4000,
        heightPx: 3000,
        focalPx: 2889,
        distanceMm: 200,
        tiltXDeg: 0,
        tiltYDeg: 0,
        rollDeg: 0,
        cornerShare: 0,
      };
      const pick = (x: number, y: number): Point => {
        const p = photograph(camera, x, y);
        return { x: p.x + 1.5 * normal(random), y: p.y + 1.5 * normal(random) };
      };
      const calibration = calibrate(
        { kind: "two-points", a: pick(-50, -20), b: pick(50, -20), lengthMm: 100 },
        {
          ...options,
          tiltSigmaDeg: 0,
          heightHalfWidthMm: 0,
          lensCornerRelativeU: 0,
          statedLengthRelativeU: 0,
        },
      );
      if (!calibration.ok) throw new Error("no calibration");
      const middle = pick(3, 4);
      const rim = pick(3.9, 5.2);
      const spot = measureSpot(calibration.value, middle, Math.hypot(rim.x - middle.x, rim.y - middle.y));
      if (Math.abs(spot.value - 3) <= spot.expandedUncertainty) inside++;
    }
    expect(inside / 500).toBeGreaterThan(0.92);
    expect(inside / 500).toBeLessThan(0.985);
  });
});
