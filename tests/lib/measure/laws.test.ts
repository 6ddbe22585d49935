import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  calibrate,
  defaultMeasureOptions,
  type Calibration,
  type MeasureOptions,
  type Quantity,
} from "@/lib/measure";
import { measureAngle, measureArea, measureExtent, measureLength, measureSpot } from "@/lib/measure/figures";
import { mapScalePoints, type Scale } from "@/lib/marks";
import type { Point } from "@/lib/geometry";
import { anyMotion, moved, type Motion } from "../geometry/arbitraries";

const runs = { numRuns: 60, seed: 17 };
/** Without the photo's size the lens is a flat share, so that nothing depends on where in the photo a mark lies. */
const options: MeasureOptions = { ...defaultMeasureOptions, photo: null, cameraDistanceMm: 250 };

/** Each kind, some tilted; photo pixels, invented. */
const scales: readonly Scale[] = [
  { kind: "two-points", a: { x: -900, y: 310 }, b: { x: 950, y: 280 }, lengthMm: 100 },
  {
    kind: "rectangle",
    corners: [
      { x: -800, y: 200 },
      { x: 790, y: 230 },
      { x: 900, y: 1180 },
      { x: -910, y: 1230 },
    ],
    widthMm: 85.6,
    heightMm: 53.98,
  },
  {
    kind: "disc",
    rim: [0, 1, 2, 3, 4, 5, 6, 7].map((i) => ({
      x: 240 * Math.cos((i * Math.PI) / 4),
      y: 700 + 215 * Math.sin((i * Math.PI) / 4),
    })),
    diameterMm: 25,
  },
];
const outline: readonly Point[] = [
  { x: -40, y: 12 },
  { x: 130, y: -35 },
  { x: 170, y: 90 },
  { x: 35, y: 150 },
];

function calibrated(scale: Scale, given = options): Calibration {
  const result = calibrate(scale, given);
  if (!result.ok) throw new Error(result.issues[0]!.code);
  return result.value;
}

/** Every figure of a set of points; `k` grows a radius with the photo. */
function figures(calibration: Calibration, points: readonly Point[], k: number): readonly Quantity[] {
  return [
    measureLength(calibration, points),
    measureArea(calibration, points),
    measureExtent(calibration, points),
    measureAngle(calibration, points[0]!, points[1]!, points[2]!),
    measureSpot(calibration, points[0]!, 33 * k),
  ];
}

describe.each(scales)("laws of measuring by $kind", (scale) => {
  const before = figures(calibrated(scale), outline, 1);

  it("a photo shifted, turned, mirrored and enlarged k times, seen k times as coarsely, gives the same sizes and intervals", () => {
    fc.assert(
      fc.property(anyMotion, (motion: Motion) => {
        const k = motion.scale;
        const move = (point: Point): Point => moved(point, motion);
        const changed = unmirrored(mapScalePoints(scale, move), motion);
        const after = figures(calibrated(changed, { ...options, photoPxPerViewPx: k }), outline.map(move), k);
        after.forEach((quantity, i) => {
          const { value, expandedUncertainty } = before[i]!;
          expect(Math.abs(quantity.value / value - 1)).toBeLessThan(1e-9);
          // Displaced by whole standard deviations about other axes: equal to first order, and the second is small.
          expect(Math.abs(quantity.expandedUncertainty / expandedUncertainty - 1)).toBeLessThan(2e-3);
        });
      }),
      runs,
    );
  });

  it("a scale object k times as large makes lengths k times, areas k squared times and angles no larger", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.2, max: 7, noNaN: true }), (k) => {
        const near = { ...options, heightHalfWidthMm: 2 * k, cameraDistanceMm: 250 * k };
        const after = figures(calibrated(enlarged(scale, k), near), outline, 1);
        const powers = { mm: 1, mm2: 2, deg: 0, ratio: 0 };
        after.forEach((quantity, i) => {
          const by = k ** powers[quantity.unit];
          expect(quantity.value).toBeCloseTo(before[i]!.value * by, 6);
          expect(quantity.expandedUncertainty).toBeCloseTo(before[i]!.expandedUncertainty * by, 6);
        });
      }),
      runs,
    );
  });

  it("drawn the other way round a figure is the same", () => {
    const after = figures(calibrated(scale), [...outline].reverse(), 1);
    for (const i of [0, 1, 2]) {
      expect(after[i]!.value).toBeCloseTo(before[i]!.value, 9);
      expect(after[i]!.expandedUncertainty).toBeCloseTo(before[i]!.expandedUncertainty, 9);
    }
  });

  // A verdict rests on where the interval lies. Intervals about one value that only shrink can leave the undecided
  // and never cross to the other side; lib/accept's laws go on from there.
  it("with anything better known the value stays and the interval shrinks inside the old one", () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, share, share, share, share, (pick, length, height, tilt, lens) => {
        const better: MeasureOptions = {
          ...options,
          pickSigmaPx: options.pickSigmaPx * pick,
          statedLengthRelativeU: options.statedLengthRelativeU * length,
          heightHalfWidthMm: options.heightHalfWidthMm * height,
          tiltSigmaDeg: options.tiltSigmaDeg * tilt,
          lensCornerRelativeU: options.lensCornerRelativeU * lens,
        };
        figures(calibrated(scale, better), outline, 1).forEach((quantity, i) => {
          expect(quantity.value).toBe(before[i]!.value);
          expect(quantity.expandedUncertainty).toBeLessThanOrEqual(before[i]!.expandedUncertainty);
        });
      }),
      runs,
    );
  });
});

/** A mirror reverses the order of corners, which run clockwise as seen; the first stays the first. */
function unmirrored(scale: Scale, { mirror }: Motion): Scale {
  if (!mirror || scale.kind !== "rectangle") return scale;
  const [a, b, c, d] = scale.corners;
  return { ...scale, corners: [b, a, d, c] };
}

function enlarged(scale: Scale, k: number): Scale {
  switch (scale.kind) {
    case "two-points":
      return { ...scale, lengthMm: scale.lengthMm * k };
    case "rectangle":
    case "edges":
      return { ...scale, widthMm: scale.widthMm * k, heightMm: scale.heightMm * k };
    case "disc":
      return { ...scale, diameterMm: scale.diameterMm * k };
    case "strip":
      return { ...scale, printFactor: scale.printFactor * k };
  }
}
