import { describe, expect, it } from "vitest";
import { listCriteria } from "@/lib/accept";
import { beadRows, sealRecord } from "@/lib/inspect";
import { readRecord } from "@/lib/inspect/make-record";
import { decisionRuleText } from "@/lib/inspect/decision-rule";
import { recordOf, signature, soundBead } from "./build";

describe("the decision rule", () => {
  // JCGM 106:2012, 8.2 simple acceptance, 8.3 decision rules based on guard bands; ISO 14253-1 from memory: u times
  // 1.65 on one side is a conformance probability of 95 %.
  it.each([
    ["as-read", /^Simple acceptance: .*JCGM 106:2012, 8\.2\)$/],
    ["guarded", /^Guarded acceptance: .*full U \(k = 2\).*JCGM 106:2012, 8\.3\)$/],
    ["one-sided", /^Guarded acceptance, one-sided: .*1\.65 .*ISO 14253-1:2017; check your copy\)$/],
  ])("%s stands in words with its reference", (gauges, words) => {
    expect(decisionRuleText({ gauges })).toMatch(words);
  });

  it("nobody knows here is named and not explained; none is not recorded", () => {
    expect(decisionRuleText({ gauges: "constructor" })).toContain("“constructor”, a rule this version");
    expect(decisionRuleText({})).toBe("not recorded");
  });

  it("has words for every choice a set offers", () => {
    for (const { id, settings } of listCriteria([])) {
      const gauges = settings.find((one) => one.id === "gauges");
      expect(gauges, id).toBeDefined();
      for (const { value } of gauges?.choices ?? [])
        expect(decisionRuleText({ gauges: value }), `${id} ${value}`).not.toContain("no words");
    }
  });

  it("is frozen with the record, as it was applied", () => {
    const bead = soundBead();
    const judgement = { ...bead.content.judgement, criteriaSettings: { gauges: "guarded" } };
    const guarded = { ...bead, content: { ...bead.content, judgement } };
    for (const [one, words] of [
      [bead, "Simple acceptance"],
      [guarded, "Guarded acceptance"],
    ] as const) {
      const { text } = sealRecord(recordOf({ beads: [one] }), null, signature);
      const [signed] = readRecord(text).beads;
      expect(signed?.verdict?.decisionRule).toContain(words);
      expect(signed && beadRows(signed).find(({ label }) => label === "Decision rule")?.value).toContain(
        words,
      );
    }
  });
});
