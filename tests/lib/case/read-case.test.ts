import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { JudgeInputSchema } from "@/lib/accept";
import { answerCase } from "@/lib/case";
import { doorNames } from "@/lib/case/doors";
import { readCase } from "@/lib/case/read-case";
import { customSentences } from "@/lib/case/issue-lines";
import { DiagnoseInputSchema } from "@/lib/diagnose";
import { emptyDrawing } from "@/lib/marks";
import { MeasureCaseSchema } from "@/lib/measure";
import { PlanAskSchema } from "@/lib/plan";
import { doorCases } from "./door-cases";

const schemas = {
  judge: JudgeInputSchema,
  measure: MeasureCaseSchema,
  diagnose: DiagnoseInputSchema,
  plan: PlanAskSchema,
};

/** Any JSON, often with names and words that the doors know. */
const anyJson = fc.letrec((tie) => ({
  value: fc.oneof(
    { depthSize: "small" },
    fc.constantFrom(null, true, "undercut", "all", "6 mm", "butt", "iso-5817-c", -1, 0.4, 1e999),
    fc.string({ maxLength: 8 }),
    fc.array(tie("value"), { maxLength: 3 }),
    fc.dictionary(
      fc.constantFrom(
        ...[
          "criteriaId",
          "weld",
          "kind",
          "settings",
          "observations",
          "id",
          "depthMm",
          "unit",
          "only",
          "shop",
          "rows",
        ],
        ...[
          "setup",
          "findings",
          "answers",
          "shopCounts",
          "drawing",
          "scale",
          "marks",
          "shape",
          "points",
          "x",
        ],
        ...["toString", "depthMM", "options"],
      ),
      tie("value"),
      { maxKeys: 5 },
    ),
  ),
})).value;

describe("a case", () => {
  it("is understood only where its schema understands it, and is refused in whole lines of ours", () => {
    let refused = 0;
    fc.assert(
      fc.property(fc.constantFrom(...doorNames), anyJson, (door, json) => {
        const read = readCase(schemas[door], json);
        const parsed = schemas[door].safeParse(json);
        if (read.ok) {
          expect(read.value).toEqual(parsed.data);
          return;
        }
        refused += 1;
        expect(read.lines.length).toBeGreaterThan(0);
        expect(read.lines.length).toBeLessThanOrEqual(13);
        for (const line of read.lines) {
          expect(line).toMatch(/^(\S.*: [A-Z1-9"].*[.?]|and \d+ more)$/);
          expect(line).not.toMatch(/Invalid|expected|received|undefined|\[object/);
        }
      }),
      { seed: 14, numRuns: 3000 },
    );
    expect(refused).toBeGreaterThan(1000);
  });

  it("keeps what its schema makes of it", () => {
    const json = { drawing: emptyDrawing, options: { pickSigmaPx: 2 } };
    expect(readCase(MeasureCaseSchema, json)).toEqual({ ok: true, value: MeasureCaseSchema.parse(json) });
  });

  it("that is too long is refused by its list", () => {
    const findings = Array<object>(501).fill({ imperfection: "undercut" });
    expect(answerCase("diagnose", { findings })).toEqual({
      ok: false,
      lines: ["findings: At most 500 entries are wanted here, not 501."],
    });
  });

  it("shows somebody's words short and on one line", () => {
    const answer = answerCase("diagnose", {
      [`a\n${"b".repeat(1e6)}`]: 1,
      setup: { gas: "c\n".repeat(1e6) },
    });
    for (const line of answer.ok ? [] : answer.lines) expect(line.length).toBeLessThan(400);
    expect(answer.ok ? "" : answer.lines[0]).toMatch(
      /^setup\.gas: There is no "c c c .*…" here\. Choose one of /,
    );
  });

  it("has a sentence for every code that a shop's own limits give, and shows each", () => {
    const shown = new Set(
      doorCases.flatMap(({ lines = [] }) => lines.map((line) => line.replace(/^\S+: /, ""))),
    );
    for (const sentence of Object.values(customSentences)) expect(shown).toContain(sentence);
  });
});
