import { describe, expect, it } from "vitest";
import { budgetLines, gaugeQuantity, sumQuantities } from "@/lib/measure";

const reading = { valueMm: 6.1, resolutionMm: 0.5, instrument: "Gauge 2, no. F-2" };
const study = { on: "2026-11-20", u: 0.3, k: 2.5 };

describe("a reading whose gauge was studied", () => {
  it("is as uncertain as the study says, with the k of the study", () => {
    const found = gaugeQuantity({ ...reading, study });
    expect(found.expandedUncertainty).toBeCloseTo(0.75, 12);
    expect(found.budget.map(({ part }) => part)).toEqual(["gauge-study"]);
    expect(budgetLines(found)[0]).toMatchObject({ name: "Gauge and hand", share: 1 });
  });

  it("is never surer than the step of its gauge allows", () => {
    // 2 r / sqrt 12 of half a millimetre is 0.289 (JCGM 100:2008, F.2.2.1).
    const fine = gaugeQuantity({ ...reading, study: { ...study, u: 0.01 } });
    expect(fine).toEqual(gaugeQuantity(reading));
    expect(fine.expandedUncertainty).toBeCloseTo(0.289, 3);
    for (const u of [0.01, 0.1, 0.144, 0.145, 1])
      expect(
        gaugeQuantity({ ...reading, study: { ...study, u } }).expandedUncertainty,
      ).toBeGreaterThanOrEqual(Math.max(0.288, u * study.k));
  });

  it("keeps its k in a sum, where readings err apart from each other", () => {
    const one = gaugeQuantity({ ...reading, study });
    expect(sumQuantities([one, one]).expandedUncertainty).toBeCloseTo(0.75 * Math.SQRT2, 10);
  });
});
