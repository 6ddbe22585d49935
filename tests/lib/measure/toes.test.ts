import { describe, expect, it } from "vitest";
import { calibrate, defaultMeasureOptions, type Quantity } from "@/lib/measure";
import { legFromWidth } from "@/lib/measure/fillet";
import { legOfThroat, throatOfLeg } from "@/lib/measure";
import { measureRipples } from "@/lib/measure/ripples";
import { measureToes } from "@/lib/measure/toes";
import { chance, normal } from "./camera";

const calibration = (pickSigmaPx: number) => {
  const result = calibrate(
    { kind: "two-points", a: { x: 0, y: 0 }, b: { x: 2000, y: 0 }, lengthMm: 100 },
    { ...defaultMeasureOptions, pickSigmaPx },
  );
  if (!result.ok) throw new Error("no calibration");
  return result.value;
};
const toe = (y: (x: number) => number) =>
  Array.from({ length: 21 }, (_, i) => ({ x: 100 * i, y: y(100 * i) }));

describe("measureToes", () => {
  it("two straight parallel toes 160 px apart at 20 px per mm: 8 mm wide, no variation, straight", () => {
    const found = measureToes(
      calibration(0),
      toe(() => 300),
      toe(() => 460),
    );
    if (!found.ok) throw new Error("not measured");
    expect(found.value.width.value).toBeCloseTo(8, 9);
    expect(found.value.widthVariation.value).toBeCloseTo(0, 9);
    expect(found.value.straightness.map(({ value }) => value)).toEqual([
      expect.closeTo(0, 9),
      expect.closeTo(0, 9),
    ]);
  });

  it("a toe that waves by 10 px has a residual of about 10 / sqrt(2) px, 0.354 mm", () => {
    const found = measureToes(
      calibration(0),
      toe((x) => 300 + 10 * Math.sin((2 * Math.PI * x) / 400)),
      toe(() => 460),
    );
    if (!found.ok) throw new Error("not measured");
    // 21 points, two spent on the line: n/(n-2) of 0.354^2, sampled at quarter waves.
    expect(found.value.straightness[0].value).toBeGreaterThan(0.33);
    expect(found.value.straightness[0].value).toBeLessThan(0.37);
    expect(found.value.widest.value - found.value.narrowest.value).toBeGreaterThan(0.8);
  });

  it("takes the picks' own scatter out of the straightness", () => {
    const random = chance(8);
    const shaky = toe(() => 300 + 3 * normal(random));
    const found = measureToes(
      calibration(3),
      shaky,
      toe(() => 460),
    );
    if (!found.ok) throw new Error("not measured");
    const { value, expandedUncertainty } = found.value.straightness[0];
    // A straight toe picked to 3 px: nought lies within the interval.
    expect(value - expandedUncertainty).toBeLessThanOrEqual(0);
  });

  it("refuses toes that do not face each other", () => {
    const left = [0, 50, 100].map((x) => ({ x, y: 300 }));
    const right = [900, 950, 1000].map((x) => ({ x, y: 460 }));
    expect(measureToes(calibration(1), left, right).ok).toBe(false);
  });
});

describe("measureRipples", () => {
  it("even ripples have a spacing and no irregularity", () => {
    const found = measureRipples(
      calibration(0),
      [0, 1, 2, 3, 4].map((i) => ({ x: 30 * i, y: 7 * i })),
    )!;
    expect(found.spacing.value).toBeCloseTo(Math.hypot(30, 7) / 20, 9);
    expect(found.irregularity).toBeCloseTo(0, 6);
  });

  it("spacings of 1, 2, 1, 2 mm: mean 1.5, deviation over mean 0.385", () => {
    const found = measureRipples(
      calibration(0),
      [0, 20, 60, 80, 120].map((x) => ({ x, y: 0 })),
    )!;
    expect(found.spacing.value).toBeCloseTo(1.5, 9);
    expect(found.irregularity).toBeCloseTo(Math.sqrt(1 / 3) / 1.5, 9);
  });

  it("three picks say nothing", () => {
    expect(
      measureRipples(
        calibration(0),
        [0, 1, 2].map((x) => ({ x: 30 * x, y: 0 })),
      ),
    ).toBeNull();
  });
});

describe("fillet from above", () => {
  it("a quarter inch equal-leg fillet has a throat of 0.177 in (makerspace course assessment; fillet gauge article)", () => {
    expect(throatOfLeg(0.25)).toBeCloseTo(0.177, 3);
    expect(legOfThroat(throatOfLeg(7.3))).toBeCloseTo(7.3, 12);
  });

  it("says that the leg is foreshortened, and is less sure of it than of the width", () => {
    const width: Quantity = {
      unit: "mm",
      value: 11.3,
      expandedUncertainty: 0.3,
      source: "photo",
      budget: [{ part: "picks", u: 0.15 }],
    };
    const bisector = legFromWidth(width, "along-bisector");
    expect(bisector.leg.value).toBeCloseTo(11.3 / Math.SQRT2, 9);
    expect(bisector.issues.map(({ code }) => code)).toEqual(["foreshortened"]);
    expect(bisector.leg.expandedUncertainty / bisector.leg.value).toBeGreaterThan(0.3 / 11.3);
    expect(legFromWidth(width, "square-to-plate").leg.value).toBe(11.3);
  });
});
