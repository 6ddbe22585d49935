import { describe, expect, it } from "vitest";
import { metalRate, passAreaMm2, travelForArea } from "@/lib/arc";
import { massRateKgPerH } from "@/lib/arc/metal-rate";

describe("metal of a wire", () => {
  it("is area times speed times density: 1.2 mm at 9 m/min, 7.85 g/cm³ is 4.794 kg/h (worked by hand)", () => {
    expect(massRateKgPerH((Math.PI * 1.2 ** 2) / 4, 150, 7.85)).toBeCloseTo(4.794, 3);
  });

  /** Printed rows of an E70C-6M data sheet: feed m/min, melted off and laid kg/h. The four that its linear mass fits. */
  const rows = [
    { diameterMm: 1.143, feed: 6.35, meltOff: 2.95, deposit: 2.72 },
    { diameterMm: 1.143, feed: 11.43, meltOff: 5.26, deposit: 4.81 },
    { diameterMm: 1.143, feed: 16.51, meltOff: 7.48, deposit: 6.8 },
    { diameterMm: 1.143, feed: 4.7, meltOff: 2.09, deposit: 1.91 },
  ];

  it.each(rows)(
    "agrees with a metal-cored data sheet at $feed m/min",
    ({ diameterMm, feed, meltOff, deposit }) => {
      const rate = metalRate({ kind: "metal-cored", diameterMm }, feed, 7.85)!;
      // The sheet's own linear mass reproduces its rows within 3.5 %; the handbook's length of solid wire per pound, by which
      // the fill is reckoned, differs from its density by 1.2 %.
      expect(Math.abs(rate.meltOffKgPerH.value / meltOff - 1)).toBeLessThan(0.035 + 0.012);
      expect(rate.depositKgPerH.low).toBeLessThan(deposit);
      expect(rate.depositKgPerH.high).toBeGreaterThan(deposit);
    },
  );

  it("E71T-1 1/16 in at 265 in/min, where it draws 300 A, lays 10.2 lb/h (filler-metal handbook)", () => {
    const { low, high } = metalRate(
      { kind: "flux-cored", diameterMm: 1.6 },
      265 * 0.0254,
      7.85,
    )!.depositKgPerH;
    expect(low).toBeLessThan(4.63);
    expect(high).toBeGreaterThan(4.63);
  });

  it("has none without a feed", () => {
    expect(metalRate({ kind: "solid", diameterMm: 1.2 }, 0, 7.85)).toBeNull();
  });

  it("finds the travel that leaves an area again", () => {
    const wire = { kind: "self-shielded", diameterMm: 0.9 } as const;
    const travel = travelForArea(wire, 6, 20)!.value;
    expect(passAreaMm2({ wire, feedMPerMin: 6, travelMmPerMin: travel })!.value).toBeCloseTo(20, 9);
    expect(travelForArea(wire, 6, 0)).toBeNull();
  });
});
