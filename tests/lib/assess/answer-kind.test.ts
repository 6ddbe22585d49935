import { describe, expect, it } from "vitest";
import { answerKind, emptyBeadContent, emptyBeadJudgement, isAnswer, isPlanned } from "@/lib/assess";
import { diagnose, DiagnoseInputSchema } from "@/lib/diagnose";
import { exampleSetups } from "@/lib/setup";
import { imperfectionIds, imperfections } from "@/lib/trade";

const kindOf = (given: object, lookedAt = true) => {
  const answer = diagnose(DiagnoseInputSchema.parse(given));
  if (!answer.ok) throw new Error(answer.issues[0]?.code);
  return answerKind(answer.value, lookedAt);
};

describe("what there is to say first", () => {
  it("is the inspector, whatever else is marked", () => {
    const cracks = imperfectionIds.filter((id) => imperfections[id].inspectorFirst);
    for (const id of cracks)
      expect(kindOf({ findings: [{ imperfection: id }, { imperfection: "undercut" }] }), id).toBe(
        "inspector",
      );
  });

  it("is questions for one mark that points everywhere, a change where the record speaks", () => {
    const { setup } = exampleSetups[0]!;
    const findings = [{ imperfection: "undercut" }];
    expect(kindOf({ findings })).toBe("ask");
    expect(kindOf({ setup, findings })).toBe("ask");
    expect(kindOf({ setup: { ...setup, polarity: "DCEP" }, findings })).toBe("change");
  });

  it("is nothing on a sound bead, and not even that where nobody looked", () => {
    expect([kindOf({}), kindOf({}, false)]).toEqual(["nothing", "unlooked"]);
    expect(
      ["inspector", "change", "ask", "nothing", "unlooked"].map((kind) => isAnswer(kind as never)),
    ).toEqual([true, true, true, false, false]);
  });
});

describe("a bead that is still to be run", () => {
  const tried = { causeId: "volt-high", sentence: "Lower the volts.", step: "" };
  const planned = { ...emptyBeadContent, judgement: { ...emptyBeadJudgement, tried } };

  it("has a change and nothing to see", () => {
    expect(isPlanned(planned)).toBe(true);
    expect(isPlanned(emptyBeadContent)).toBe(false);
  });

  it("is run with the first photo, reading, look, answer or outcome", () => {
    const judged = (part: object) => ({ ...planned, judgement: { ...planned.judgement, ...part } });
    for (const run of [
      { ...planned, photos: [{}] as never },
      judged({ outcome: "better" }),
      judged({ readings: [{}] }),
      judged({ lookedFor: ["undercut"] }),
      judged({ answers: { stubbing: "no" } }),
    ])
      expect(isPlanned(run)).toBe(false);
  });
});
