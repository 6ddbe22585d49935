import { describe, expect, it } from "vitest";
import { calibrate, defaultMeasureOptions, type Quantity } from "@/lib/measure";
import { measureLength, measureSpot } from "@/lib/measure/figures";

/** 20 photo px per mm, 4 photo px under each CSS pixel unless a point says otherwise; invented. */
const options = { ...defaultMeasureOptions, photoPxPerViewPx: 4 };
const at = (x: number, y: number, grainPx?: number) => (grainPx === undefined ? { x, y } : { x, y, grainPx });
const scale = (grainPx?: number) =>
  calibrate(
    { kind: "two-points", a: at(0, 900, grainPx), b: at(2000, 900, grainPx), lengthMm: 100 },
    options,
  );
const part = ({ budget }: Quantity, name: string): number => budget.find((one) => one.part === name)?.u ?? 0;

function lengthWith(first: number | undefined, second: number | undefined): Quantity {
  const calibration = scale();
  if (!calibration.ok) throw new Error("no calibration");
  return measureLength(calibration.value, [at(500, 400, first), at(900, 400, second)]);
}

describe("the error of a pick follows the zoom it was set at", () => {
  it("a point without a grain is worth the stated error at the assumed view", () => {
    expect(part(lengthWith(undefined, undefined), "picks")).toBeCloseTo((Math.SQRT2 * 1.5 * 4) / 20, 9);
  });

  it("each end counts with its own", () => {
    expect(part(lengthWith(4, 4), "picks")).toBeCloseTo((Math.SQRT2 * 1.5 * 4) / 20, 9);
    expect(part(lengthWith(1, 4), "picks")).toBeCloseTo((1.5 * Math.hypot(1, 4)) / 20, 9);
    expect(part(lengthWith(1, undefined), "picks")).toBeCloseTo((1.5 * Math.hypot(1, 4)) / 20, 9);
  });

  it("no zoom makes a point better than half a photo pixel", () => {
    expect(part(lengthWith(0.1, 0.1), "picks")).toBeCloseTo((Math.SQRT2 * 0.5) / 20, 9);
  });

  it("holds for the picks of the scale too", () => {
    const [far, near] = [scale(4), scale(1)].map((calibration) => {
      if (!calibration.ok) throw new Error("no calibration");
      return part(measureLength(calibration.value, [at(500, 400), at(900, 400)]), "scale-picks");
    });
    // The displacement is finite: what is left beyond first order is (sigma / span) squared, 1e-5 here.
    expect(far! / near!).toBeCloseTo(4, 4);
  });

  it("a spot's middle and rim are two picks of one view", () => {
    const calibration = scale();
    if (!calibration.ok) throw new Error("no calibration");
    const spot = measureSpot(calibration.value, at(500, 400, 2), 30);
    expect(part(spot, "picks")).toBeCloseTo((2 * Math.SQRT2 * 1.5 * 2) / 20, 9);
  });
});
