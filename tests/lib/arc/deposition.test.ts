import { describe, expect, it } from "vitest";
import { depositAreaMm2, depositionFor, travelForAreaMmPerS } from "@/lib/arc/deposition";
import { areaFromLegMm2, legFromAreaMm, legFromFaceMm } from "@/lib/arc/fillet";
import {
  circularCapMm2,
  LB,
  linearMassKgPerM,
  meltOffKgPerH,
  parabolicCapMm2,
  STEEL_KG_PER_MM3,
  STEEL_LB_PER_IN3,
} from "./textbook";

/** Face width of a flat fillet, mm: the hypotenuse over two equal legs. */
const faceFromLegMm = (legMm: number): number => Math.hypot(legMm, legMm);

describe("melt-off and deposition", () => {
  it("inches per pound of solid wire: MIG handbook table, within 1.3 %", () => {
    for (const [inch, perLb] of [
      [0.03, 4956],
      [0.035, 3648],
      [0.045, 2196],
      [0.0625, 1152],
      [0.09375, 516],
    ] as const) {
      const theory = 1 / (((Math.PI * inch ** 2) / 4) * STEEL_LB_PER_IN3);
      expect(Math.abs(perLb / theory - 1)).toBeLessThan(0.013);
      const ours = (LB / linearMassKgPerM(inch * 25.4)) * (1000 / 25.4);
      expect(Math.abs(ours / theory - 1)).toBeLessThan(0.001);
    }
  });

  it("300 in/min of 0.045 in wire: 8.20 lb/h by the handbook's inches per pound (trade handbook)", () => {
    const ours = meltOffKgPerH(300 * 0.0254, linearMassKgPerM(1.143)) / LB;
    expect(Math.abs(ours - 8.2) / 8.2).toBeLessThan(0.015);
  });

  it("the trade's 13.1·d²·feed lies 1.8 % below the exact constant (two trade articles, 2009)", () => {
    expect(13.1 * 0.045 ** 2 * 300).toBeCloseTo(7.96, 2);
    const exact = meltOffKgPerH(300 * 0.0254, linearMassKgPerM(1.143)) / LB;
    expect(13.1 * 0.045 ** 2 * 300).toBeLessThan(exact);
    expect(Math.abs((13.1 * 0.045 ** 2 * 300) / exact - 1)).toBeLessThan(0.02);
  });

  it("1.2 mm solid at 9 m/min, density 7850: 4.794 kg/h (computed)", () => {
    expect(meltOffKgPerH(9, linearMassKgPerM(1.2, 7.85e-6))).toBeCloseTo(4.794, 3);
  });

  it("E70C-6M manual page: feed times printed linear mass gives the printed melt-off, deposit over it the efficiency", () => {
    const rows = [
      [0.0075, 2.79, 1.22, 1.09, 89],
      [0.0075, 3.43, 1.54, 1.36, 88],
      [0.0075, 4.7, 2.09, 1.91, 91],
      [0.0075, 6.35, 2.95, 2.72, 92],
      [0.0075, 11.43, 5.26, 4.81, 91],
      [0.0075, 16.51, 7.48, 6.8, 91],
      [0.0137, 3.81, 3.18, 2.9, 91],
      [0.0137, 6.35, 5.49, 4.99, 91],
      [0.0137, 8.89, 7.67, 6.99, 91],
      [0.0137, 11.43, 9.98, 9.12, 91],
    ] as const;
    console.table(
      rows.map(([m, feed, melt]) => ({
        feed,
        melt,
        ours: +meltOffKgPerH(feed, m).toFixed(2),
        errorPercent: +(100 * (meltOffKgPerH(feed, m) / melt - 1)).toFixed(1),
      })),
    );
    for (const [m, feed, melt, deposit, efficiency] of rows) {
      // The linear masses are printed to two digits; the larger wire's rows scatter more.
      expect(Math.abs(meltOffKgPerH(feed, m) / melt - 1)).toBeLessThan(m < 0.01 ? 0.035 : 0.07);
      expect(Math.abs((100 * deposit) / melt - efficiency)).toBeLessThanOrEqual(0.5);
      expect(Math.abs(deposit / melt - depositionFor("metal-cored").efficiency)).toBeLessThan(0.03);
    }
  });
});

describe("fillet by mass balance (exact geometry, computed)", () => {
  it.each([
    [1.2, 150, 6, 0.98, 1, 27.709, 7.444, 5.264],
    [1.2, 150, 6, 0.86, 0.85, 20.669, 6.429, 4.546],
    [0.9, 60, 4, 0.78, 0.85, 6.327, 3.557, 2.515],
  ])("d %d, feed %d, travel %d", (diameterMm, feedMmPerS, travel, efficiency, fill, area, leg, throat) => {
    const deposit = { diameterMm, feedMmPerS, efficiency, fill };
    const ours = depositAreaMm2(deposit, travel);
    expect(Math.abs(ours - area)).toBeLessThan(0.002);
    expect(Math.abs(legFromAreaMm(ours) - leg)).toBeLessThan(0.002);
    expect(Math.abs(legFromAreaMm(ours) / Math.SQRT2 - throat)).toBeLessThan(0.002);
    expect(travelForAreaMmPerS(deposit, areaFromLegMm2(leg))).toBeCloseTo(travel, 2);
  });

  it("caps: parabola 13.333 mm² at 8 by 2.5; convex fillet of leg 8, 1 mm convex: 39.542 and 39.589 mm²", () => {
    expect(parabolicCapMm2(8, 2.5)).toBeCloseTo(13.333, 3);
    const face = faceFromLegMm(8);
    expect(face).toBeCloseTo(11.314, 3);
    expect(legFromFaceMm(face)).toBeCloseTo(8, 9);
    expect(areaFromLegMm2(8) + parabolicCapMm2(face, 1)).toBeCloseTo(39.542, 3);
    expect(areaFromLegMm2(8) + circularCapMm2(face, 1)).toBeCloseTo(39.589, 3);
    expect(circularCapMm2(4, 3)).toBeNaN();
  });

  it("1/2 in fillet: 0.424 lb/ft at 0.283 lb/in³ (filler-metal handbook)", () => {
    // Printed to three places, cut rather than rounded: 0.4245.
    expect(Math.abs(areaFromLegMm2(0.5) * 12 * STEEL_LB_PER_IN3 - 0.424)).toBeLessThan(0.001);
  });

  it("NaN without travel", () => {
    expect(depositAreaMm2({ diameterMm: 1.2, feedMmPerS: 150, fill: 1, efficiency: 1 }, 0)).toBeNaN();
  });
});

/**
 * Worked costing examples of the trade. The trade's constant 13.1 (lb/h from diameter, feed and efficiency) lies 1.8 %
 * under the exact one, so figures that came by it are met within 2 %.
 */
describe("worked deposition examples", () => {
  const IN = 25.4;
  const LB_PER_FT = LB / (12 * IN); // kg/mm
  const rateLbPerH = (inch: number, ipm: number, efficiency: number) =>
    (efficiency * meltOffKgPerH((ipm * IN) / 1000, linearMassKgPerM(inch * IN))) / LB;

  it("0.052 in wire at 320 in/min and 98 %: 11.1 lb/h (trade article)", () => {
    expect(Math.abs(rateLbPerH(0.052, 320, 0.98) / 11.1 - 1)).toBeLessThan(0.02);
    expect(Math.abs(13.1 * 0.052 ** 2 * 320 * 0.98 - 11.1)).toBeLessThan(0.05);
  });

  it("3/8 in fillet a tenth oversize: 0.289 lb/ft (start of the example published, end computed)", () => {
    const perFoot = (areaFromLegMm2(0.4125 * IN) * STEEL_KG_PER_MM3) / LB_PER_FT;
    expect(Math.abs(perFoot - 0.289)).toBeLessThan(0.0005);
  });

  it("travel for that fillet with 0.045 in wire at 300 in/min: 5.51 in/min (formula from memory, computed)", () => {
    const deposit = { diameterMm: 0.045 * IN, feedMmPerS: (300 * IN) / 60, fill: 1, efficiency: 1 };
    const ipm = (travelForAreaMmPerS(deposit, areaFromLegMm2(0.4125 * IN)) * 60) / IN;
    expect(Math.abs(ipm / 5.51 - 1)).toBeLessThan(0.02);
    // By exact density and the same area: feed times the ratio of areas.
    expect(ipm).toBeCloseTo((300 * (Math.PI / 4) * 0.045 ** 2) / (0.5 * 0.4125 ** 2), 9);
  });

  it("electrode for 10 ft of 1/2 in fillet at 86 %: 4.93 lb (formula published, computed)", () => {
    // Whatever the feed: the wire melted in the time the weld takes.
    for (const feedMmPerS of [60, 150]) {
      const deposit = { diameterMm: 1.2, feedMmPerS, fill: 1, efficiency: 0.86 };
      const hours = (120 * IN) / travelForAreaMmPerS(deposit, areaFromLegMm2(0.5 * IN)) / 3600;
      const wireKg = meltOffKgPerH((feedMmPerS * 60) / 1000, linearMassKgPerM(1.2)) * hours;
      expect(Math.abs(wireKg / LB - 4.93)).toBeLessThan(0.01);
    }
  });

  it.each([
    ["3.2", 1 / 8, 0.048],
    ["6.0", 1 / 4, 0.192],
    ["8.0", 5 / 16, 0.299],
  ])(
    "fillet of nominal %s mm: %d in leg and a tenth over, %d g/mm (filler-cost handbook)",
    (_, inch, grams) => {
      // The tenth over the nominal inch leg is our reading of the printed figures; density 7.85 g/cm³ as there.
      expect(Math.abs(areaFromLegMm2(1.1 * inch * IN) * 7.85e-3 - grams)).toBeLessThan(0.0005);
    },
  );

  it("a convex face 20 % heavier than flat is one whose convexity is about 0.11 of the leg (the same handbook's factor)", () => {
    const leg = 1.1 * 6.35;
    const heavier = (convexity: number) =>
      1 + parabolicCapMm2(faceFromLegMm(leg), convexity) / areaFromLegMm2(leg);
    expect(heavier(0.106 * leg)).toBeCloseTo(1.2, 2);
  });
});
