import { describe, expect, it } from "vitest";
import { judge, JudgeInputSchema, listCriteria, type Verdict } from "@/lib/accept";
import { contradictionCodes } from "@/lib/accept/verdict";
import {
  codeUnitsOf,
  contradictionSentence,
  looks,
  rowSentence,
  unusedSentence,
  verdictSays,
} from "@/lib/report";
import { imperfectionIds } from "@/lib/trade";
import { inch, metric } from "@/lib/units";
import { dice, randomWeld } from "../accept/random-weld";

/** Invented welds; limits are those of the codes named. */
const numbers = new Map([
  ["p:u", 3],
  ["p:c", 4],
]);
const markNumber = (id: string): number | null => numbers.get(id) ?? null;
function verdictOf(given: object): Verdict {
  const result = judge(JudgeInputSchema.parse({ lookedFor: "all", ...given }));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const said = (verdict: Verdict, ruleId: string, units = metric): string =>
  rowSentence(
    verdict.rows.find((row) => row.ruleId === ruleId)!,
    {
      units,
      codeUnits: codeUnitsOf(verdict),
      markNumber,
    },
  );
const undercut = (more: object) => ({ id: "p:u", imperfection: "undercut", place: "upper-toe", ...more });

describe("a row in one sentence", () => {
  const weld = { kind: "fillet", thicknessMm: 10, throatMm: 5, lengthMm: 200 };
  it("names the mark, its value, the limit and why it fails", () => {
    const verdict = verdictOf({ criteriaId: "iso-5817-c", weld, observations: [undercut({ depthMm: 0.7 })] });
    expect(said(verdict, "iso-c-1.7-undercut")).toBe(
      "Mark 3: read 0.7 mm; at most 0.5 mm, min(0.1 t, 0.5); beyond the limit.",
    );
  });

  it("names what is missing and the gauge that gives it", () => {
    const verdict = verdictOf({ criteriaId: "iso-5817-c", weld, observations: [undercut({})] });
    expect(said(verdict, "iso-c-1.7-undercut")).toBe(
      "Mark 3; at most 0.5 mm, min(0.1 t, 0.5); a reading is missing. Missing: depth of mark 3, with an undercut gauge.",
    );
  });

  it("states the limit first in the code's own unit", () => {
    const given = {
      criteriaId: "aws-d1-1-cyclic",
      weld: { kind: "fillet", thicknessMm: 10, legMm: 6, lengthMm: 200, transverseToTension: false },
      observations: [undercut({ depthMm: 0.5 })],
    };
    const us = verdictOf({ ...given, settings: { units: "us" } });
    expect(said(us, "d1-1-cyclic-7-undercut")).toContain("at most 1/32 in (0.79 mm)");
    expect(said(us, "d1-1-cyclic-7-undercut", inch)).toContain("at most 1/32 in;");
    expect(said(verdictOf(given), "d1-1-cyclic-7-undercut", inch)).toContain("at most 1 mm (0.039 in)");
  });

  it("names both limits where it is not known which applies", () => {
    const verdict = verdictOf({
      criteriaId: "aws-d1-1-cyclic",
      weld: { kind: "fillet", thicknessMm: 10, legMm: 6, lengthMm: 200 },
      observations: [undercut({ depthMm: 0.5 })],
    });
    expect(said(verdict, "d1-1-cyclic-7-undercut")).toBe(
      "Mark 3; at most 0.25 mm or at most 1 mm; it depends on what is not stated of the weld. Missing: whether it lies across the tensile stress, from the drawing or the procedure.",
    );
  });

  it("says without a count that none is allowed", () => {
    const verdict = verdictOf({
      criteriaId: "iso-5817-c",
      weld,
      observations: [{ id: "p:c", imperfection: "longitudinal-crack", lengthMm: 9 }],
    });
    expect(said(verdict, "iso-c-1.1-crack")).toBe("Mark 4; none is allowed, and it is marked.");
    expect(unusedSentence(verdict, markNumber)).toBe("Read, but decided without it: length of mark 4.");
  });

  it("is never empty, never says undefined, and never twice the same, on any weld", () => {
    for (let seed = 1; seed <= 400; seed++) {
      const result = judge(randomWeld(dice(seed)));
      if (!result.ok) throw new Error("no verdict");
      const words = {
        units: metric,
        codeUnits: codeUnitsOf(result.value),
        markNumber: (id: string) => Number(id.slice(1)) + 1,
      };
      const lines = result.value.rows
        .filter((row) => row.result !== "not-applicable")
        .map((row) => `${row.title}: ${rowSentence(row, words)}`);
      expect(new Set(lines).size).toBe(lines.length);
      for (const line of lines) expect(line).not.toMatch(/undefined|NaN|Infinity|null|: \.$/);
    }
  });
});

describe("words beside the rows", () => {
  it("has a sentence for every contradiction", () => {
    for (const code of contradictionCodes)
      expect(contradictionSentence({ code, between: ["throat"], again: [] }, markNumber)).toMatch(
        /throat.*\.$/,
      );
  });

  it("says what cannot stand together and what to read again", () => {
    const verdict = verdictOf({
      criteriaId: "iso-5817-c",
      weld: { kind: "fillet", thicknessMm: 8, throatMm: 4.2, lengthMm: 200 },
      beadReadings: { leg1: 6, leg2: 6, convexity: 0, throat: 5.1 },
    });
    expect(contradictionSentence(verdict.contradictions[0]!, markNumber)).toMatch(
      /^No one fillet has these readings: leg on the first plate, leg on the second plate, throat, convexity\. Read again: .*throat/,
    );
  });

  it("says that nobody has looked before it says anything else", () => {
    const weld = { kind: "fillet", thicknessMm: 8, throatMm: 4.2, lengthMm: 200 };
    const bare = verdictOf({ criteriaId: "iso-5817-c", lookedFor: [], weld });
    expect(verdictSays(bare).short).toBe("Not looked at yet");
    expect(verdictSays(verdictOf({ criteriaId: "iso-5817-c", weld })).short).not.toBe("Not looked at yet");
  });

  it("asks for cracks once, and only where all of them are asked", () => {
    for (const { imperfections } of listCriteria()) {
      const asked = looks(imperfections);
      expect(asked.flatMap(({ ids }) => ids).sort()).toEqual([...new Set(imperfections)].sort());
    }
    expect(looks(imperfectionIds)[0]!.name).toBe("Cracks of any kind");
    expect(looks(["crater-crack"])[0]!.name).not.toBe("Cracks of any kind");
  });
});
