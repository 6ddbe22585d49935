import fc from "fast-check";
import { expect, it } from "vitest";
import { calibrate, defaultMeasureOptions, mapPoint } from "@/lib/measure";
import { distance } from "@/lib/geometry";
import { photograph, type Camera } from "./camera";

const exact = {
  ...defaultMeasureOptions,
  pickSigmaPx: 0,
  statedLengthRelativeU: 0,
  heightHalfWidthMm: 0,
  lensCornerRelativeU: 0,
  photo: { widthPx: 4000, heightPx: 3000 },
};

/** Against the test's own pinhole camera, whose focal length is the one that is taken for granted. */
it("of the two tilts a disc leaves open, one is the true one to the last digit, wherever it lies", () => {
  fc.assert(
    fc.property(
      fc.double({ min: -35, max: 35, noNaN: true }),
      fc.double({ min: -35, max: 35, noNaN: true }),
      fc.double({ min: -180, max: 180, noNaN: true }),
      fc.double({ min: 150, max: 500, noNaN: true }),
      fc.double({ min: -30, max: 30, noNaN: true }),
      fc.double({ min: -30, max: 30, noNaN: true }),
      (tiltXDeg, tiltYDeg, rollDeg, distanceMm, x0, y0) => {
        const camera: Camera = {
          widthPx: 4000,
          heightPx: 3000,
          focalPx: (4000 * 26) / 36,
          distanceMm,
          tiltXDeg,
          tiltYDeg,
          rollDeg,
          cornerShare: 0,
        };
        const rim = Array.from({ length: 9 }, (_, i) =>
          photograph(camera, x0 + 12.5 * Math.cos(i), y0 + 12.5 * Math.sin(i)),
        );
        const calibration = calibrate({ kind: "disc", rim, diameterMm: 25 }, exact);
        if (!calibration.ok) throw new Error(calibration.issues[0]!.code);
        const { map, variations } = calibration.value;
        const twins = variations.find(({ part }) => part === "near-side")!;
        const [a, b, c] = [
          photograph(camera, -20, 5),
          photograph(camera, 14, 31),
          photograph(camera, 9, -12),
        ];
        const off = (one: typeof map): number =>
          Math.hypot(
            distance(mapPoint(one, a), mapPoint(one, b)) - Math.hypot(34, 26),
            distance(mapPoint(one, a), mapPoint(one, c)) - Math.hypot(29, 17),
          );
        // The ellipse is fitted to picks given in doubles of some thousand pixels.
        expect(Math.min(off(twins.plus), off(twins.minus))).toBeLessThan(1e-4);
        // The middle is a compromise, and never further off than the worse of the two.
        expect(off(map)).toBeLessThan(Math.max(off(twins.plus), off(twins.minus)) + 1e-6);
      },
    ),
    { numRuns: 150, seed: 8 },
  );
});
