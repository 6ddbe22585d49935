import { describe, expect, it } from "vitest";
import { travelForLeg } from "@/lib/arc";
import {
  emptyRunSetup,
  legAt,
  legOfPass,
  onePass,
  plateAmps,
  rowCurves,
  voltsWithFeed,
  wireOf,
  type RunSetup,
} from "@/lib/setup";

const t11: RunSetup = {
  ...emptyRunSetup,
  process: "FCAW-S",
  electrodeClass: "E71T-11",
  electrodeDiameterMm: 0.9,
  gas: "none",
  joint: "tee",
  position: "flat",
};

describe("what a set-up is to be expected to do", () => {
  it("asks an ampere for a thousandth of an inch, up to a quarter inch (small wire-feed manual)", () => {
    expect(plateAmps({ ...t11, thicknessMm: 2.54 })!.amps).toBeCloseTo(100, 9);
    expect(plateAmps({ ...t11, thicknessMm: 25 })!.amps).toBeCloseTo(250, 9);
    expect(plateAmps(t11)).toBeNull();
  });

  it("asks 35 % less out of position (common practice: 30 to 40 %)", () => {
    expect(plateAmps({ ...t11, thicknessMm: 2.54, position: "overhead" })!.amps).toBeCloseTo(65, 9);
    expect(plateAmps({ ...t11, thicknessMm: 2.54, position: "horizontal" })!.amps).toBeCloseTo(100, 9);
  });

  it("reads volts off the same curve by either name", () => {
    expect(voltsWithFeed(t11, 5)).toBe(rowCurves(t11)!.volts(5));
    expect(voltsWithFeed({ ...t11, electrodeClass: null }, 5)).toBeNull();
  });

  it("finds the leg again from the travel that leaves it", () => {
    const travel = travelForLeg(wireOf(t11)!, 6, 5)!.value;
    expect(legAt(t11, 6, travel)!.value).toBeCloseTo(5, 9);
    expect(legAt({ ...t11, joint: "bead-on-plate" }, 6, travel)).toBeNull();
  });

  it("splits a leg that one pass does not carry", () => {
    const { mm } = onePass(t11);
    expect(legOfPass({ ...t11, targetLegMm: mm })).toEqual({ legMm: mm, passes: 1 });
    const two = legOfPass({ ...t11, targetLegMm: mm * 1.4 })!;
    expect(two.passes).toBe(2);
    // The metal of the passes together is that of the whole leg.
    expect(two.passes * two.legMm ** 2).toBeCloseTo((mm * 1.4) ** 2, 9);
    expect(legOfPass(t11)).toBeNull();
  });
});
