import { describe, expect, it } from "vitest";
import { arcEnergyKJPerMm, heatFactors } from "@/lib/arc";

describe("arc energy and heat input: worked examples", () => {
  it("trade article: 29 V, 325 A, 25 in in 2 min: 45.24 kJ/in", () => {
    const travelMmPerS = (25 * 25.4) / 120;
    const energy = arcEnergyKJPerMm({ volts: 29, amps: 325, travelMmPerS });
    expect(energy * 25.4).toBeCloseTo(45.24, 2);
    expect(Math.abs(energy - 1.781)).toBeLessThan(0.001);
  });
  it("course page: 20 V, 300 A, 2.5 mm/s: 2.4 kJ/mm", () => {
    expect(arcEnergyKJPerMm({ volts: 20, amps: 300, travelMmPerS: 2.5 })).toBeCloseTo(2.4, 9);
  });
  it("examination question, answer computed: 20 V, 500 A, 20 mm/min, efficiency 0.9: 27 kJ/mm", () => {
    expect(0.9 * arcEnergyKJPerMm({ volts: 20, amps: 500, travelMmPerS: 20 / 60 })).toBeCloseTo(27, 9);
  });
  it("examination question, answer computed: 40 V, 400 A, 4 mm/s, 0.8 of which 0.3 melts at 20 J/mm³: 48 mm²", () => {
    const joulePerMm = 1000 * arcEnergyKJPerMm({ volts: 40, amps: 400, travelMmPerS: 4 });
    expect((joulePerMm * heatFactors.GMAW.k * 0.3) / 20).toBeCloseTo(48, 9);
  });
  it("examination question, answer computed: 20 V, 200 A, 40 mm² at 10 J/mm³, 0.8 and 0.625: 5.0 mm/s", () => {
    const energy = (40 * 10) / (0.8 * 0.625) / 1000;
    expect(arcEnergyKJPerMm({ volts: 20, amps: 200, travelMmPerS: 5 })).toBeCloseTo(energy, 9);
  });
  it("flux-cored, computed with k 0.8 (EN 1011-1): 17 V, 140 A, 4 mm/s: 0.595 and 0.476 kJ/mm", () => {
    const readings = { volts: 17, amps: 140, travelMmPerS: 4 };
    expect(arcEnergyKJPerMm(readings)).toBeCloseTo(0.595, 9);
    expect(heatFactors["FCAW-S"].k * arcEnergyKJPerMm(readings)).toBeCloseTo(0.476, 9);
  });
  it("NaN without travel", () => {
    expect(arcEnergyKJPerMm({ volts: 20, amps: 100, travelMmPerS: 0 })).toBeNaN();
  });
});
