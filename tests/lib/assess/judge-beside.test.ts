import { expect, it } from "vitest";
import { assess, BeadJudgementSchema, emptyBeadContent, judgeBeside, type BeadContent } from "@/lib/assess";
import { emptyRunSetup } from "@/lib/setup";

const content: BeadContent = {
  ...emptyBeadContent,
  title: "Bead",
  setup: { ...emptyRunSetup, joint: "butt-open", thicknessMm: 10 },
  judgement: BeadJudgementSchema.parse({ criteriaId: "iso-5817-c" }),
};

it("judges the bead by the other set exactly as if the bead named it, and changes nothing", () => {
  const before = structuredClone(content);
  const beside = judgeBeside(content, [], [], { criteriaId: "iso-5817-c@2023", criteriaSettings: {} });
  const named = { ...content, judgement: { ...content.judgement, criteriaId: "iso-5817-c@2023" } };
  expect(beside).toEqual(assess(named, []).verdict);
  expect(beside).toMatchObject({ ok: true, value: { edition: "2023" } });
  expect(content).toEqual(before);
});

it("is nothing without a set, and says so for one that is not there", () => {
  expect(judgeBeside(content, [], [], { criteriaId: null, criteriaSettings: {} })).toBeNull();
  expect(judgeBeside(content, [], [], { criteriaId: "iso-5817-c@1066", criteriaSettings: {} })).toMatchObject(
    {
      ok: false,
      issues: [{ code: "unknown-criteria" }],
    },
  );
});
