import { describe, expect, it } from "vitest";
import { criteriaSets } from "@/lib/accept/criteria";
import { symbolsIn } from "@/lib/accept/formula";
import { commonSettings } from "@/lib/accept/settings";
import type { Condition, Test } from "@/lib/accept/rule";
import { judge, JudgeInputSchema, listCriteria } from "@/lib/accept";
import { imperfectionIds, imperfections } from "@/lib/trade";

/** Every crack of the vocabulary: whoever adds one must add it to the tables, or the laws below fail. */
const crackIds = imperfectionIds.filter((id) => imperfections[id].group === "crack");

const sets = criteriaSets.map((set) => [set.id, set] as const);

describe.each(sets)("criteria set %s", (_, set) => {
  it("has an id of its own for every criterion, and every criterion a variant with a test", () => {
    const ids = set.criteria.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { variants } of set.criteria) {
      expect(variants.length).toBeGreaterThan(0);
      for (const { tests } of variants) expect(tests.length).toBeGreaterThan(0);
    }
  });

  it("names document, edition and clause for every variant", () => {
    for (const { id, variants } of set.criteria)
      for (const { source } of variants) {
        expect([id, source.document, source.clause]).not.toContain(undefined);
        expect(source.clause).not.toBe("");
        expect(source.edition).toBe(set.edition);
      }
  });

  it("uses only settings it offers, with choices it offers, and every default is a choice", () => {
    const offered = [...set.settings, ...commonSettings];
    expect(new Set(offered.map(({ id }) => id)).size).toBe(offered.length);
    for (const { choices, default: standard } of offered)
      expect(choices.map(({ value }) => value)).toContain(standard);
    const conditions: Condition[] = set.criteria.flatMap((one) => one.variants.flatMap(({ when }) => when));
    for (const condition of conditions)
      if ("setting" in condition) {
        const setting = offered.find(({ id }) => id === condition.setting);
        expect(setting, condition.setting).toBeDefined();
        expect(setting!.choices.map(({ value }) => value)).toContain(condition.is);
      }
  });

  it("marks every row from memory, from an older edition or from a cut text: check your copy", () => {
    const all = listCriteria().find(({ id }) => id === set.id)!.imperfections;
    const result = judge(
      JudgeInputSchema.parse({
        criteriaId: set.id,
        weld: { kind: set.weldKinds[0]!, thicknessMm: 6, lengthMm: 200, throatMm: 4 },
        lookedFor: all,
      }),
    );
    if (!result.ok) throw new Error("not judged");
    for (const row of result.value.rows)
      expect([row.ruleId, row.checkYourCopy]).toEqual([
        row.ruleId,
        !["seen", "derived"].includes(row.source.confidence),
      ]);
  });

  it("says which parts of its document it does not carry", () => {
    expect(set.notCovered.length).toBeGreaterThan(0);
    const clauses = set.notCovered.map(({ clause }) => clause);
    expect(new Set(clauses).size).toBe(clauses.length);
  });

  it("limits cracks of every kind to none by default", () => {
    for (const crack of crackIds) {
      const tests: Test[] = set.criteria
        .filter(({ imperfections }) => imperfections.includes(crack))
        .flatMap(({ variants }) => variants.at(-1)!.tests);
      expect(tests.map(({ test }) => test)).toContain("none-allowed");
    }
  });

  it("keeps its limits to symbols of the weld and to imperfections of the trade", () => {
    for (const { imperfections, variants } of set.criteria) {
      for (const id of imperfections) expect(imperfectionIds).toContain(id);
      for (const test of variants.flatMap(({ tests }) => tests))
        if ("limit" in test) expect(symbolsIn(test.limit).length).toBeLessThanOrEqual(2);
    }
  });
});

it("has an id of its own for every set", () => {
  expect(new Set(criteriaSets.map(({ id }) => id)).size).toBe(criteriaSets.length);
});
