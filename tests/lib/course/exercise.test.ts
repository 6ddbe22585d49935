import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CODE_LENGTH, emptyExercise, exerciseCode, handInSetup, normaliseCode } from "@/lib/course";
import { RunSetupSchema } from "@/lib/setup";
import { codeLetters } from "@/lib/course/exercise-code";

describe("a hand-in code", () => {
  it("has no two letters that are taken for each other", () => {
    for (const [one, other] of ["0O", "OQ", "0Q", "1I", "1L", "2Z", "5S", "8B", "UV"])
      expect(codeLetters.includes(one!) && codeLetters.includes(other!), `${one}${other}`).toBe(false);
    expect(new Set(codeLetters).size).toBe(codeLetters.length);
  });

  it("is made of its letters whatever the chances, and is read as typed", () => {
    const chance = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(fc.array(chance, { minLength: CODE_LENGTH, maxLength: CODE_LENGTH }), (chances) => {
        const code = exerciseCode(chances);
        expect(code).toHaveLength(CODE_LENGTH);
        for (const letter of code) expect(codeLetters).toContain(letter);
        expect(normaliseCode(` ${code.slice(0, 3).toLowerCase()}-${code.slice(3)} `)).toBe(code);
      }),
    );
  });
});

const emptyRun = RunSetupSchema.parse({});

describe("the set-up of a bead handed in", () => {
  const exercise = {
    ...emptyExercise,
    joint: "lap" as const,
    electrodeClass: "E71T-11",
    setup: { ...emptyExercise.setup, volts: 17, wireFeedMPerMin: 5, joint: "tee" as const },
  };
  const said = { wireFeedMPerMin: 6, volts: null, ctwdMm: 15, polarity: "DCEN" as const };

  it("is what the student said; nothing of the exercise counts as run", () => {
    expect(handInSetup(exercise, said, false)).toEqual({ ...emptyRun, ...said });
    const silent = { wireFeedMPerMin: null, volts: null, ctwdMm: null, polarity: null };
    expect(handInSetup(exercise, silent, false)).toEqual(emptyRun);
  });

  it("is the exercise's where they ran it as asked, and what they said differently wins", () => {
    const setup = handInSetup(exercise, said, true);
    expect(setup).toMatchObject({ wireFeedMPerMin: 6, volts: 17, ctwdMm: 15, polarity: "DCEN" });
    expect(setup).toMatchObject({ joint: "lap", electrodeClass: "E71T-11" });
  });
});
