import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { legForRun, travelForLeg, type Wire } from "@/lib/arc";
import { depositOf } from "@/lib/arc/deposition";
import { passAreaMm2 } from "@/lib/arc/fillet-run";
import { wireKinds } from "@/lib/arc/tables/burn-off-rows";
import { depositionKgPerH, LB, parabolicCapMm2 } from "./textbook";

const wireArb: fc.Arbitrary<Wire> = fc.record({
  kind: fc.constantFrom(...wireKinds),
  diameterMm: fc.constantFrom(0.8, 0.9, 1.143, 1.2, 1.6, 1.7),
});
const positive = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe("deposition rate", () => {
  /** Trade article: .045 in solid wire, 300 in/min, by 13.1·d²·feed 7.96 lb/h; trade handbook, inches per pound: 8.20 lb/h. */
  it("0.045 in solid wire at 300 in/min: both published figures lie inside the bounds, less 4 % lost", () => {
    const rate = depositionKgPerH({ kind: "solid", diameterMm: 1.143 }, 300 * 0.0254);
    for (const lbPerH of [7.96, 8.2]) {
      expect(rate.low).toBeLessThan(0.96 * lbPerH * LB);
      expect(rate.high).toBeGreaterThan(0.96 * lbPerH * LB);
    }
  });

  /** E70C-6M metal-cored manual page: feed in m/min, deposit in kg/h, .045 and 1/16 in. */
  it.each([
    [1.143, 2.79, 1.09],
    [1.143, 4.7, 1.91],
    [1.143, 6.35, 2.72],
    [1.143, 11.43, 4.81],
    [1.143, 16.51, 6.8],
    [1.5875, 6.35, 4.99],
    [1.5875, 11.43, 9.12],
  ])("metal-cored %d mm at %d m/min: %d kg/h printed", (diameterMm, feed, printed) => {
    const rate = depositionKgPerH({ kind: "metal-cored", diameterMm }, feed);
    expect(rate.low).toBeLessThan(printed);
    expect(rate.high).toBeGreaterThan(printed);
  });

  it("the stored name 1.2 spans wire of .045 in and of 1.2 mm; self-shielded wire is .045 in", () => {
    const rate = (diameterMm: number) => depositionKgPerH({ kind: "flux-cored", diameterMm }, 8);
    const named = rate(1.2);
    const [inch, metric] = [rate(1.143).value, rate(1.143).value * (1.2 / 1.143) ** 2];
    expect(named.value).toBeGreaterThan(inch);
    expect(named.value).toBeLessThan(metric);
    expect(named.relativeError).toBeGreaterThan(rate(1.143).relativeError);
    expect(depositOf({ kind: "self-shielded", diameterMm: 1.2 }, 8).diameterMm).toBeCloseTo(1.143, 9);
  });
});

describe("leg, feed and travel of a one-pass fillet", () => {
  it("travel and leg follow from one another", () => {
    fc.assert(
      fc.property(wireArb, positive(1, 15), positive(80, 800), (wire, feedMPerMin, travelMmPerMin) => {
        const leg = legForRun({ wire, feedMPerMin, travelMmPerMin })!;
        expect(Math.abs(travelForLeg(wire, feedMPerMin, leg.value)!.value / travelMmPerMin - 1)).toBeLessThan(
          1e-9,
        );
        const half = legForRun({ wire, feedMPerMin, travelMmPerMin: 4 * travelMmPerMin })!;
        expect(Math.abs(half.value / leg.value - 0.5)).toBeLessThan(1e-9);
      }),
      { numRuns: 1000, seed: 5 },
    );
  });

  /**
   * Filler-cost handbook: fillets weigh up to 1.20 times the flat one. Whatever the face between flat and that, the true
   * leg lies inside the bounds, even with the metal off by the stated error of the convexity alone.
   */
  it("its bounds hold a flat face and a convex one of the handbook's", () => {
    fc.assert(
      fc.property(
        wireArb,
        positive(1, 15),
        positive(80, 800),
        positive(0, 0.075),
        (wire, feedMPerMin, travelMmPerMin, k) => {
          const run = { wire, feedMPerMin, travelMmPerMin };
          // Leg z, face z·√2, parabolic cap of k times the face: area = z²/2 + cap.
          const unit = 0.5 + parabolicCapMm2(Math.SQRT2, k * Math.SQRT2);
          const truth = Math.sqrt(passAreaMm2(run)!.value / unit);
          const leg = legForRun(run)!;
          expect(leg.low).toBeLessThan(truth);
          expect(leg.high).toBeGreaterThan(truth);
        },
      ),
      { numRuns: 1000, seed: 6 },
    );
  });

  /**
   * Trade reference arithmetic: .045 in solid wire, 300 in/min, 12 in/min travel leaves about a 0.28 in leg (a flat face,
   * from memory).
   */
  it("0.045 in solid wire, 300 and 12 in/min: about 0.28 in, 7.1 mm", () => {
    const leg = legForRun({
      wire: { kind: "solid", diameterMm: 1.143 },
      feedMPerMin: 7.62,
      travelMmPerMin: 304.8,
    })!;
    expect(leg.low).toBeLessThan(7.1);
    expect(leg.high).toBeGreaterThan(7.1);
    expect(leg.relativeError).toBeGreaterThan(0.045);
  });

  it("nothing from nothing", () => {
    const wire = { kind: "solid", diameterMm: 1.2 } as const;
    expect(legForRun({ wire, feedMPerMin: 0, travelMmPerMin: 200 })).toBeNull();
    expect(legForRun({ wire, feedMPerMin: 5, travelMmPerMin: 0 })).toBeNull();
    expect(travelForLeg(wire, 5, 0)).toBeNull();
    expect(travelForLeg(wire, NaN, 5)).toBeNull();
  });
});
