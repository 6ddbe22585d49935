import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  compareVerdicts,
  judge,
  JudgeInputSchema,
  listCriteria,
  type JudgeInput,
  type Verdict,
} from "@/lib/accept";
import { sameRule } from "@/lib/accept/compare-verdicts";
import { judgeInputs } from "./arbitraries";
import { inDepth } from "../../setup/in-depth";

function judged(input: JudgeInput, criteriaId = input.criteriaId): Verdict {
  const result = judge({ ...input, criteriaId });
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const runs = { numRuns: inDepth(100, 400), seed: 20261126 };

describe("compareVerdicts", () => {
  /** ISO 5817 Table 1, 1.7: min(0.1 t, 0.5) at level C, min(0.05 t, 0.5) at level B; 0.4 mm on 6 mm plate. */
  it("pairs the same item of two levels: 0.4 mm of undercut on 6 mm plate", () => {
    const input = JudgeInputSchema.parse({
      criteriaId: "iso-5817-c",
      weld: { kind: "butt", thicknessMm: 6, lengthMm: 300, singleSided: true, seam: "plate" },
      observations: [{ id: "u", imperfection: "undercut", alongMm: [10, 30], lengthMm: 20, depthMm: 0.4 }],
      lookedFor: "all",
      beadReadings: { reinforcement: 0.5, width: 10, misalignment: 0 },
    });
    const { sameWord, differences, alike } = compareVerdicts(judged(input), judged(input, "iso-5817-b"));
    expect(sameWord).toBe(false);
    const [undercut] = differences;
    expect(undercut).toMatchObject({ rule: "iso-1.7-undercut", differs: ["result", "limit"] });
    expect(undercut!.first).toMatchObject({ result: "meets" });
    expect(undercut!.second).toMatchObject({ result: "fails" });
    expect([undercut!.first!.limit!.value, undercut!.second!.limit!.value]).toEqual([
      0.5,
      expect.closeTo(0.3, 9),
    ]);
    expect(alike).toBeGreaterThan(5);
    // The cap's limit differs (1 + 0.15 b, 1 + 0.1 b) although both meet it.
    expect(differences.find(({ rule }) => rule === "iso-1.9-excess-weld-metal")?.differs).toEqual(["limit"]);
  });

  it("shows a row that only one of two codes has, on its side", () => {
    const input = JudgeInputSchema.parse({
      criteriaId: "iso-5817-c",
      weld: { kind: "butt", thicknessMm: 6 },
    });
    const { differences } = compareVerdicts(judged(input), judged(input, "asme-ix-qw-194"));
    for (const { differs, first, second } of differences) {
      expect([first === null, second === null]).toContain(true);
      expect(differs).toEqual([first === null ? "only-second" : "only-first"]);
    }
    expect(differences.some(({ rule }) => rule === "asme-ix-qw-194-crack")).toBe(true);
  });

  it("finds nothing between a verdict and itself", () => {
    fc.assert(
      fc.property(judgeInputs("iso-5817-c"), (input) => {
        const verdict = judged(input);
        const applying = verdict.rows.filter(({ result }) => result !== "not-applicable");
        expect(compareVerdicts(verdict, judged(input))).toEqual({
          sameWord: true,
          differences: [],
          alike: applying.length,
        });
      }),
      runs,
    );
  });

  it("is the same turned round, and a different word never comes without a different row", () => {
    let differing = 0;
    fc.assert(
      fc.property(judgeInputs("iso-5817-c"), fc.constantFrom("b", "d", "c@2023"), (input, other) => {
        const [a, b] = [judged(input), judged(input, `iso-5817-${other}`)];
        const [there, back] = [compareVerdicts(a, b), compareVerdicts(b, a)];
        expect(back.alike).toBe(there.alike);
        const turned = { "only-first": "only-second", "only-second": "only-first" } as const;
        const key = (rule: string, differs: readonly string[]) => `${rule} ${differs.join()}`;
        expect(back.differences.map(({ rule, differs }) => key(rule, differs)).sort()).toEqual(
          there.differences
            .map(({ rule, differs }) =>
              key(
                rule,
                differs.map((one) => turned[one as keyof typeof turned] ?? one),
              ),
            )
            .sort(),
        );
        if (!there.sameWord) {
          differing++;
          expect(
            there.differences.some(({ differs }) => !(differs.length === 1 && differs[0] === "limit")),
          ).toBe(true);
        }
      }),
      runs,
    );
    expect(differing).toBeGreaterThan(10);
  });

  it("never takes two rules of one set for the same", () => {
    for (const { id, rules } of listCriteria())
      expect([id, new Set(rules.map((rule) => sameRule(rule.id))).size]).toEqual([id, rules.length]);
  });
});
