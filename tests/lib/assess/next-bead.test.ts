import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BeadContentSchema, emptyBeadContent, emptyBeadJudgement, nextBead } from "@/lib/assess";
import { emptyRunSetup } from "@/lib/setup";

const tried = { causeId: "travel-too-slow", sentence: "Travel faster.", step: "Travel faster" };
const setup = { ...emptyRunSetup, process: "FCAW-S" as const };
const titleAfter = (title: string): string => nextBead({ ...emptyBeadContent, title }, tried, setup).title;

describe("the next bead", () => {
  it("takes over what it is judged by and who runs it, and nothing that was seen", () => {
    const judgement = {
      ...emptyBeadJudgement,
      criteriaId: "iso-5817-c",
      criteriaSettings: { edge: true },
      weld: { ...emptyBeadJudgement.weld, rootWidthMm: 3 },
      lookedFor: ["undercut" as const],
      answers: { "check-1": "yes" },
      outcome: "cured" as const,
      note: "The first one.",
    };
    expect(nextBead({ title: "Lap", welder: "W-7", judgement }, tried, setup)).toEqual({
      title: "Lap, try 2",
      welder: "W-7",
      setup,
      judgement: {
        ...emptyBeadJudgement,
        criteriaId: "iso-5817-c",
        criteriaSettings: { edge: true },
        weld: judgement.weld,
        tried,
      },
    });
  });

  it("counts its tries", () => {
    expect(titleAfter("Lap on 2 mm")).toBe("Lap on 2 mm, try 2");
    expect(titleAfter("Lap on 2 mm, try 2")).toBe("Lap on 2 mm, try 3");
    expect(titleAfter("Lap, try 9")).toBe("Lap, try 10");
  });

  it("has a title that can be stored and tells its try, however long the one before was", () => {
    const titles = fc
      .string({ minLength: 1, maxLength: 120 })
      .filter((one) => one.trim() === one && one !== "");
    fc.assert(
      fc.property(titles, (title) => {
        const next = titleAfter(title);
        expect(BeadContentSchema.shape.title.safeParse(next).success).toBe(true);
        expect(next).not.toBe(title);
        expect(next).toMatch(/, try \d+$/);
      }),
      { seed: 20261126, numRuns: 500 },
    );
    expect(titleAfter("x".repeat(120))).toBe(`${"x".repeat(113)}, try 2`);
  });
});
