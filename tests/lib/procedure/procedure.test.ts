import { describe, expect, it } from "vitest";
import { planAnswer, PlanAskSchema } from "@/lib/plan";
import { SteelSchema } from "@/lib/procedure";
import { cetPercent, iiwPercent, pcmPercent } from "@/lib/procedure/carbon-equivalents";
import { coolingTime, thickPlateS, thinPlateS, transitionThicknessMm } from "@/lib/procedure/cooling-time";
import { preheatMethodB } from "@/lib/procedure/preheat";

/**
 * Heat input, start, thickness; thick and thin plate, transition. EN 1011-2 annex D as a steelmaker's handbook prints it;
 * no published answer was found, so the figures are worked out beside the program from the printed formula.
 */
const rows = [
  [1, 20, 10, 5.288, 11.364, 14.66],
  [1, 20, 20, 5.288, 2.841, 14.66],
  [1.5, 100, 12, 9.964, 25.452, 19.18],
  [1.5, 100, 25, 9.964, 5.864, 19.18],
  [2, 150, 15, 15.692, 37.664, 23.24],
  [2, 150, 30, 15.692, 9.416, 23.24],
  [0.8, 20, 6, 4.231, 20.202, 13.11],
] as const;

describe("cooling time", () => {
  it.each(rows)("at %s kJ/mm from %s °C in %s mm", (heat, start, thickness, thick, thin, transition) => {
    expect(Math.abs(thickPlateS(heat, start) - thick)).toBeLessThan(0.002);
    expect(Math.abs(thinPlateS(heat, start, thickness) - thin)).toBeLessThan(0.002);
    expect(Math.abs(transitionThicknessMm(heat, start) - transition)).toBeLessThan(0.01);
    const time = coolingTime({
      heatKJPerMm: heat,
      startC: start,
      thicknessMm: thickness,
      joint: "bead-on-plate",
    })!;
    expect(time.flow).toBe(thickness < transition ? "thin" : "thick");
    expect(time.value).toBeCloseTo(Math.max(thickPlateS(heat, start), thinPlateS(heat, start, thickness)), 9);
  });

  it("goes the other way too: 10 s at 100 °C is 1.5054 kJ/mm, 15 s at 20 °C is 2.8364, in thick plate", () => {
    expect(10 / thickPlateS(1, 100)).toBeCloseTo(1.5054, 3);
    expect(15 / thickPlateS(1, 20)).toBeCloseTo(2.8364, 3);
  });

  it("grows with heat and start, never with thickness, and a T cools faster than a bead on plate", () => {
    const at = (
      heatKJPerMm: number,
      startC: number,
      thicknessMm: number,
      joint: "tee" | "bead-on-plate" = "tee",
    ) => coolingTime({ heatKJPerMm, startC, thicknessMm, joint })!.value;
    for (let i = 1; i < 20; i += 1) {
      expect(at(0.3 + 0.1 * i, 20, 12)).toBeGreaterThan(at(0.2 + 0.1 * i, 20, 12));
      expect(at(1, 15 * i, 12)).toBeGreaterThan(at(1, 15 * (i - 1), 12));
      expect(at(1, 20, 2 * i + 2)).toBeLessThanOrEqual(at(1, 20, 2 * i));
      expect(at(1, 20, 2 * i)).toBeLessThan(at(1, 20, 2 * i, "bead-on-plate"));
    }
    expect(coolingTime({ heatKJPerMm: 1, startC: 500, thicknessMm: 10, joint: "tee" })).toBeNull();
  });
});

describe("preheat by method B", () => {
  /** Worked out beside the program from the formula as quoted. */
  it.each([
    [0.3, 30, 5, 1, 85.07],
    [0.35, 40, 5, 1.5, 135.14],
    [0.25, 20, 10, 1, 48.93],
  ])("CET %s, %s mm, H%s, %s kJ/mm", (cet, thicknessMm, hydrogenMlPer100G, heatKJPerMm, celsius) => {
    const found = preheatMethodB({ cetPercent: cet, thicknessMm, hydrogenMlPer100G, heatKJPerMm });
    expect(Math.abs(found.celsius - celsius)).toBeLessThan(0.01);
    expect(found.outside).toEqual([]);
  });

  it("says what lies outside its range", () => {
    const asked = { cetPercent: 0.15, thicknessMm: 5, hydrogenMlPer100G: 25, heatKJPerMm: 0.4 };
    expect(preheatMethodB(asked).outside).toEqual(Object.keys(asked));
  });
});

describe("carbon equivalents", () => {
  // A 355 grade by certificate, invented; worked by hand from the formulas, which are from memory.
  const steel = SteelSchema.parse({
    carbonPercent: 0.16,
    siliconPercent: 0.3,
    manganesePercent: 1.4,
    chromiumPercent: 0.1,
    nickelPercent: 0.15,
    copperPercent: 0.15,
  });

  it("by hand", () => {
    expect(iiwPercent(steel)).toBeCloseTo(0.16 + 1.4 / 6 + 0.1 / 5 + 0.3 / 15, 12);
    expect(cetPercent(steel)).toBeCloseTo(0.16 + 0.14 + 0.25 / 20 + 0.15 / 40, 12);
    expect(pcmPercent(steel)).toBeCloseTo(0.16 + 0.01 + 1.65 / 20 + 0.0025, 12);
  });

  it("stand in the answer of a plan that knows its steel, with the caution", () => {
    const ask = PlanAskSchema.parse({
      electrodeClass: "E71T-1C",
      electrodeDiameterMm: 1.2,
      joint: "tee",
      position: "horizontal",
      thicknessMm: 20,
      steel,
    });
    const { procedure, plan } = planAnswer(ask);
    const heat = plan!.gives.find(({ code }) => code === "heat-input")!.value;
    expect(procedure!.preheat.outside).toEqual([]);
    expect(procedure!.cooling[0]!.time.value).toBeCloseTo(
      coolingTime({ heatKJPerMm: heat, startC: 20, thicknessMm: 20, joint: "tee" })!.value,
      9,
    );
    expect(procedure!.caution).toMatch(/not a qualified procedure/);
    expect(planAnswer({ ...ask, steel: null }).procedure).toBeNull();
    // Stainless is not judged by these formulas.
    expect(planAnswer({ ...ask, electrodeClass: "E308LT1-1", thicknessMm: 8 }).procedure).toBeNull();
  });
});
