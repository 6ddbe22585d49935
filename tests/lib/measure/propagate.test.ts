import { describe, expect, it } from "vitest";
import { applyHomography, fitHomography, homographyJacobian } from "@/lib/geometry";
import { chance, normal } from "./camera";
import { budgetLines, calibrate, defaultMeasureOptions, mapPoint, type MeasureOptions } from "@/lib/measure";
import { measureLength } from "@/lib/measure/figures";

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

  it("the two end picks are 98 % of it or more: the card is five times the feature and more", () => {
    const result = calibrate(card, picksOnly);
    if (!result.ok) throw new Error("no calibration");
    const [first] = budgetLines(measureLength(result.value, segment));
    expect(first!.part).toBe("picks");
    expect(first!.share).toBeGreaterThan(0.98);
  });

  it("agrees with a Monte Carlo of 20,000 draws of all six picks (0.146 mm)", () => {
    const random = chance(20);
    const shaken = (p: { x: number; y: number }) => ({
      x: p.x + 1.5 * normal(random),
      y: p.y + 1.5 * normal(random),
    });
    const lengths = Array.from({ length: 20_000 }, () => {
      const [a, b, c, d] = card.corners;
      const page = [
        { x: 0, y: 0 },
        { x: 85.6, y: 0 },
        { x: 85.6, y: 53.98 },
        { x: 0, y: 53.98 },
      ];
      const h = fitHomography([a, b, c, d].map(shaken), page)!;
      const [p, q] = segment.map((end) => applyHomography(h, shaken(end)));
      return Math.hypot(q!.x - p!.x, q!.y - p!.y);
    });
    const mean = lengths.reduce((sum, one) => sum + one, 0) / lengths.length;
    const sigma = Math.sqrt(lengths.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (lengths.length - 1));
    // A standard deviation from 20,000 draws is itself good to 0.5 %.
    expect(Math.abs(sigma - 0.146)).toBeLessThan(0.003);
    const result = calibrate(card, picksOnly);
    if (!result.ok) throw new Error("no calibration");
    expect(Math.abs(measureLength(result.value, segment).expandedUncertainty / 2 / sigma - 1)).toBeLessThan(
      0.02,
    );
  });

  /** Criminisi, Reid and Zisserman, A Plane Measuring Device, BMVC 1997: structure of the covariance, and its trend. */
  it("with an exact map, s^2 is the picks' covariance through the Jacobian, along the line between the ends", () => {
    const result = calibrate(card, picksOnly);
    if (!result.ok) throw new Error("no calibration");
    const [a, b] = segment.map((end) => mapPoint(result.value.map, end));
    const size = Math.hypot(b!.x - a!.x, b!.y - a!.y);
    const u = [(b!.x - a!.x) / size, (b!.y - a!.y) / size] as const;
    const variance = segment.reduce((sum, end) => {
      const [xx, xy, yx, yy] = homographyJacobian(result.value.map.homography, end);
      return sum + 1.5 ** 2 * ((u[0] * xx + u[1] * yx) ** 2 + (u[0] * xy + u[1] * yy) ** 2);
    }, 0);
    const picks = measureLength(result.value, segment).budget.find(({ part }) => part === "picks")!.u;
    expect(picks / Math.sqrt(variance)).toBeCloseTo(1, 4);
  });

  it("the more reference points, the smaller the part of the map: 4, 5, 10", () => {
    const grid = [
      [0, 0],
      [80, 0],
      [80, 50],
      [0, 50],
      [40, 25],
      [20, 0],
      [60, 50],
      [0, 25],
      [80, 25],
      [40, 0],
    ] as const;
    const parts = [4, 5, 10].map((count) => {
      const corners = grid
        .slice(0, count)
        .map(([xMm, yMm]) => ({ x: 400 + 15 * xMm + 0.9 * yMm, y: 300 + 15 * yMm - 0.6 * xMm, xMm, yMm }));
      const result = calibrate({ kind: "strip", corners, cornerSigmaPx: 1.5, printFactor: 1 }, picksOnly);
      if (!result.ok) throw new Error(result.issues[0]!.code);
      return measureLength(result.value, segment).budget.find(({ part }) => part === "scale-picks")!.u;
    });
    expect(parts[1]).toBeLessThan(parts[0]!);
    expect(parts[2]).toBeLessThan(parts[1]!);
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
