import { describe, expect, it } from "vitest";
import {
  calibrate,
  defaultMeasureOptions,
  mapPoint,
  measureLength,
  type MeasureOptions,
} from "@/lib/measure";

/** Nothing but the picks is uncertain. */
const picksOnly: MeasureOptions = {
  ...defaultMeasureOptions,
  statedLengthRelativeU: 0,
  heightHalfWidthMm: 0,
  tiltSigmaDeg: 0,
  lensCornerRelativeU: 0,
};

/**
 * Worked checks, computed two ways by us (first order, and a Monte Carlo of 20,000 draws); no published source.
 * Size of an ID-1 card: ISO/IEC 7810, from memory.
 */
describe("propagate", () => {
  const card = {
    kind: "rectangle" as const,
    corners: [
      { x: 412, y: 305 },
      { x: 1618, y: 268 },
      { x: 1702, y: 1060 },
      { x: 355, y: 1012 },
    ] as [
      { x: number; y: number },
      { x: number; y: number },
      { x: number; y: number },
      { x: number; y: number },
    ],
    widthMm: 85.6,
    heightMm: 53.98,
  };
  const segment = [
    { x: 800, y: 700 },
    { x: 960, y: 704 },
  ];

  it("takes the perspective out of a segment beside a card", () => {
    const result = calibrate(card, picksOnly);
    if (!result.ok) throw new Error("no calibration");
    const a = mapPoint(result.value.map, segment[0]!);
    const b = mapPoint(result.value.map, segment[1]!);
    expect(a.x).toBeCloseTo(30.15825, 4);
    expect(a.y).toBeCloseTo(31.33608, 4);
    expect(b.x).toBeCloseTo(41.06319, 4);
    expect(b.y).toBeCloseTo(31.55244, 4);
    expect(Math.abs(measureLength(result.value, segment).value - 10.90708)).toBeLessThan(1e-4);
  });

  it("carries a pick error of 1.5 px on the corners and on the segment, shared map included", () => {
    const result = calibrate(card, picksOnly);
    if (!result.ok) throw new Error("no calibration");
    const length = measureLength(result.value, segment);
    const picks = length.budget.find(({ part }) => part === "picks")!.u;
    expect(Math.abs(length.expandedUncertainty / 2 - 0.1454)).toBeLessThan(3e-4);
    expect(Math.abs(picks - 0.1446)).toBeLessThan(3e-4);
  });

  it("agrees with the closed formula for a rule: (sL/L)^2 = (sqrt2 s/P)^2 + (sqrt2 s/Pref)^2 + (sref/Lref)^2", () => {
    const rule = {
      kind: "two-points" as const,
      a: { x: 0, y: 0 },
      b: { x: 2000, y: 0 },
      lengthMm: 100,
    };
    const object = [
      { x: 300, y: 400 },
      { x: 460, y: 400 },
    ];
    for (const [relative, expected] of [
      [0, 0.1064],
      [0.001, 0.1067],
    ] as const) {
      const result = calibrate(rule, { ...picksOnly, statedLengthRelativeU: relative });
      if (!result.ok) throw new Error("no calibration");
      const length = measureLength(result.value, object);
      expect(length.value).toBeCloseTo(8, 9);
      expect(Math.abs(length.expandedUncertainty / 2 - expected)).toBeLessThan(1e-4);
    }
  });
});
