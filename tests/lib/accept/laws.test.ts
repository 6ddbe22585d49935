import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { judge, listCriteria, type JudgeInput, type Verdict } from "@/lib/accept";
import type { Quantity } from "@/lib/measure";
import { imperfectionIds, imperfections } from "@/lib/trade";
import { judgeInputs } from "./arbitraries";
import { inDepth } from "../../setup/in-depth";

/** Every crack of the vocabulary: whoever adds one must add it to the tables, or the laws below fail. */
const crackIds = imperfectionIds.filter((id) => imperfections[id].group === "crack");
const runs = { numRuns: inDepth(50, 400), seed: 20261125 };

function verdictOf(input: JudgeInput): Verdict {
  const result = judge(input);
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}

const withUncertainty = (input: JudgeInput, factor: number): JudgeInput => {
  const scaled = <T>(value: T): T =>
    value !== null && typeof value === "object" && "expandedUncertainty" in value
      ? {
          ...value,
          expandedUncertainty: (value as unknown as Quantity).expandedUncertainty * factor,
        }
      : value;
  const over = <T extends object>(object: T): T =>
    Object.fromEntries(Object.entries(object).map(([key, value]) => [key, scaled(value)])) as T;
  return {
    ...input,
    observations: input.observations.map(over),
    beadReadings: over(input.beadReadings),
  };
};

/** Laws of our own; no published source. */
describe("judge, as laws", () => {
  it("never accepts at a tighter ISO 5817 level what a looser one rejects, and all three verdicts happen", () => {
    const happened = new Set<string>();
    fc.assert(
      fc.property(judgeInputs("iso-5817-c"), (input) => {
        const [b, c, d] = ["b", "c", "d"].map(
          (level) => verdictOf({ ...input, criteriaId: `iso-5817-${level}` }).verdict,
        );
        for (const one of [b, c, d]) happened.add(one!);
        for (const [tight, loose] of [
          [b, c],
          [c, d],
          [b, d],
        ])
          expect(tight === "accept" && loose === "reject").toBe(false);
      }),
      runs,
    );
    expect([...happened].sort()).toEqual(["accept", "cannot-say", "reject"]);
  });

  it.each(["iso-5817-c", "aws-d1-1-static", "aws-d1-1-cyclic"])(
    "keeps a decision when every uncertainty shrinks (%s)",
    (criteriaId) => {
      let decided = 0;
      fc.assert(
        fc.property(judgeInputs(criteriaId), fc.double({ min: 0, max: 1, noNaN: true }), (input, factor) => {
          const guarded = { ...input, settings: { gauges: "guarded" } };
          const before = verdictOf(guarded).verdict;
          const after = verdictOf(withUncertainty(guarded, factor)).verdict;
          if (before !== "cannot-say") {
            decided++;
            expect(after).toBe(before);
          }
        }),
        runs,
      );
      expect(decided).toBeGreaterThan(20);
    },
  );

  it("accepts nothing more when less was looked for", () => {
    fc.assert(
      fc.property(judgeInputs("iso-5817-d"), (input) => {
        if (verdictOf(input).verdict !== "accept")
          expect(verdictOf({ ...input, lookedFor: [] }).verdict).not.toBe("accept");
      }),
      runs,
    );
  });

  it("does not care for the order of the marks, nor for where along the weld one begins to count", () => {
    fc.assert(
      fc.property(
        judgeInputs("aws-d1-1-static"),
        fc.double({ min: -50, max: 50, noNaN: true }),
        (input, by) => {
          const moved = input.observations.map((one) => ({
            ...one,
            alongMm: one.alongMm && ([one.alongMm[0] + by, one.alongMm[1] + by] as const),
          }));
          const results = (case_: JudgeInput): string =>
            verdictOf(case_)
              .rows.map((row) => `${row.ruleId} ${row.result} ${row.value?.toFixed(6)}`)
              .sort()
              .join("\n");
          expect(results({ ...input, observations: moved.reverse() })).toBe(results(input));
        },
      ),
      { ...runs, numRuns: inDepth(60, 200) },
    );
  });

  it("rejects any crack, whatever else, and refers it to an inspector", () => {
    for (const { id } of listCriteria())
      for (const imperfection of crackIds)
        fc.assert(
          fc.property(judgeInputs("iso-5817-d"), (input) => {
            const crack = {
              id: "crack",
              imperfection,
              place: null,
              patterns: [],
              poreCount: null,
              aboutCount: null,
              alongMm: null,
              lengthMm: null,
              depthMm: null,
              heightMm: null,
              diameterMm: null,
              areaMm2: null,
            };
            const verdict = verdictOf({
              ...input,
              criteriaId: id,
              observations: [...input.observations, crack],
            });
            expect(verdict.verdict).toBe("reject");
            expect(verdict.referToInspector).toContain("crack");
          }),
          { numRuns: inDepth(2, 5), seed: 7 },
        );
  });
});
