import { describe, expect, it } from "vitest";
import { BeadJudgementSchema, emptyBeadContent } from "@/lib/assess";
import { judgeInput } from "@/lib/assess/judge-input";

const study = { on: "2026-11-20", u: 0.3, k: 2.5 };

/** What the judge is given of one reading of the whole bead. */
function given(carried: object) {
  const reading = { value: 6.3, instrument: "Gauge 2", resolution: 0.5, ...carried };
  const readings = [
    { ...reading, quantity: "leg-1" },
    { ...reading, quantity: "toe-angle", value: 120, resolution: 1 },
  ];
  const judgement = BeadJudgementSchema.parse({ criteriaId: "iso-5817-c", readings });
  return judgeInput({ ...emptyBeadContent, judgement }, [])?.beadReadings;
}

describe("what the judge is given of a reading whose gauge was studied", () => {
  it("is as uncertain as the study says, of the whole bead and in the reading's own unit", () => {
    expect(given({ study })?.leg1).toMatchObject({ value: 6.3, unit: "mm", expandedUncertainty: 0.75 });
    expect(given({ study })?.toeAngle).toMatchObject({ value: 120, unit: "deg", expandedUncertainty: 0.75 });
    // 2 r / sqrt 12 (JCGM 100:2008, F.2.2.1).
    expect(given({})?.leg1?.expandedUncertainty).toBeCloseTo(0.2887, 4);
  });
});
