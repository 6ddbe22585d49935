import { describe, expect, it } from "vitest";
import { basisOf, diagnose, DiagnoseInputSchema } from "@/lib/diagnose";
import { certaintyOf } from "@/lib/diagnose/certainty";

const told = (given: object) => {
  const input = DiagnoseInputSchema.parse(given);
  const answer = diagnose(input);
  if (!answer.ok) throw new Error(answer.issues[0]?.code);
  return { input, diagnosis: answer.value };
};
const wire = { process: "FCAW-S", electrodeClass: "E71T-11", joint: "tee", thicknessMm: 6 };
const spatter = [{ imperfection: "spatter" }];

describe("what a cause rests on", () => {
  it("is the record, where the record itself shows it", () => {
    const { input, diagnosis } = told({ setup: { ...wire, polarity: "DCEP" }, findings: spatter });
    expect(basisOf(input, diagnosis, "polarity")).toBe("record");
  });

  it("is the person who looked and found it", () => {
    const { input, diagnosis } = told({
      setup: wire,
      findings: spatter,
      answers: { "polarity-lugs": "fault" },
    });
    expect(basisOf(input, diagnosis, "polarity")).toBe("found");
  });

  it("is a word for the likeliest, and for no other one", () => {
    const { input, diagnosis } = told({ setup: wire, findings: spatter });
    const [first, ...rest] = diagnosis.causes;
    expect(basisOf(input, diagnosis, first!.id)).toBe(certaintyOf(first!.probability));
    expect(new Set(rest.map(({ id }) => basisOf(input, diagnosis, id)))).toEqual(new Set(["among"]));
  });
});
