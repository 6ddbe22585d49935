import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { diagnose, DiagnoseInputSchema, type Diagnosis } from "@/lib/diagnose";
import { factWeights } from "@/lib/diagnose/tables/fact-weights";
import { readingsOf } from "@/lib/diagnose/readings/all";
import { contextOf } from "@/lib/diagnose/diagnose";
import { checkSetup, emptyRunSetup, processMeant, type RunSetup, type SetupCode } from "@/lib/setup";
import { setupCodes } from "@/lib/setup/finding";
import { setupArb } from "@/tests/lib/setup/setup-arbitrary";

/** Laws of our own; no published source. The inputs by name are beads that two judges once saw differently. */
function run(setup: Partial<RunSetup>): Diagnosis {
  const result = diagnose(DiagnoseInputSchema.parse({ setup }));
  if (!result.ok) throw new Error(JSON.stringify(result.issues));
  return result.value;
}
const check = (setup: Partial<RunSetup>) => checkSetup({ ...emptyRunSetup, ...setup });
const probability = (found: Diagnosis, id: string) =>
  found.causes.find((cause) => cause.id === id)!.probability;

describe("one fact, one judge", () => {
  it("the record contradicts itself exactly where the check warns of what the table names", () => {
    fc.assert(
      fc.property(setupArb, (setup) => {
        // The process may follow from the class: then the diagnosis sees what the check would with it written down.
        const warned = check({ ...setup, process: processMeant(setup) })
          .filter(
            ({ severity, code }) => severity !== "note" && factWeights[code]?.contradiction !== undefined,
          )
          .map(({ code }) => code);
        const said = run(setup).contradictions.map(({ code }) => code);
        const ofSetup = said.filter((one) => (setupCodes as readonly string[]).includes(one));
        expect(ofSetup.toSorted()).toEqual(warned.toSorted());
      }),
      { numRuns: 300 },
    );
  });

  it("a reading that says above or below a window is one that the check judged so, or that is unusual for its process", () => {
    fc.assert(
      fc.property(setupArb, (setup) => {
        const context = contextOf(DiagnoseInputSchema.parse({ setup }));
        for (const { key, odds } of readingsOf(context)) {
          if (
            !["ctwdMm", "volts", "wireFeedMPerMin", "amps", "gasFlowLPerMin", "volts-for-feed"].includes(key)
          )
            continue;
          const strong = Object.values(odds).some((factor) => factor >= 5);
          const judged = context.facts.some(
            ({ state, data }) =>
              state !== "in-order" && data["field"] === (key === "volts-for-feed" ? "volts" : key),
          );
          if (strong) expect([key, judged]).toEqual([key, true]);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("a cause named by a contradiction is all but certain", () => {
    fc.assert(
      fc.property(setupArb, (setup) => {
        const found = run(setup);
        // Where wire and process belong to different records, no rule by either of them is sure.
        if (found.contradictions.some(({ code }) => code === "process-against-class")) return;
        for (const { causeId } of found.contradictions)
          if (causeId !== null && found.causes.some(({ id }) => id === causeId))
            expect(probability(found, causeId)).toBeGreaterThan(0.8);
      }),
      { numRuns: 300 },
    );
  });

  it("the sentences name the suspect that the advice goes against, and none where it finds none", () => {
    fc.assert(
      fc.property(setupArb, (setup) => {
        const { causes, firstChange, explanation } = run(setup);
        const suspect = causes.find(({ id }) => id === firstChange?.causeId);
        const named = explanation.flatMap(
          ({ sentence }) => sentence.match(/^(.*) is the first suspect/)?.[1] ?? [],
        );
        expect(named).toEqual(suspect ? [suspect.name] : []);
      }),
      { numRuns: 300 },
    );
  });

  it("every code of the check is weighed, or is known to say nothing about causes", () => {
    const silent: readonly SetupCode[] = [
      "position-beyond-class-list",
      "metal-against-class",
      "reading-below-window",
      "reading-above-window",
      "reading-low-for-feed",
      "reading-high-for-feed",
      "reading-beyond-data-sheet",
      "gas-in-wind",
      "zinc-fume",
      "primer-or-paint",
      "oil-or-paint",
      "wet-surface",
      "heavy-rust",
      "scale-under-gas",
      "chromium-fume",
    ];
    expect(setupCodes.filter((code) => factWeights[code] === undefined)).toEqual(
      setupCodes.filter((code) => silent.includes(code)),
    );
  });
});

describe("beads that two judges once saw differently", () => {
  const small = { inputPower: "120V", electrodeDiameterMm: 0.9, electrodeClass: "E71T-11" } as const;

  it("a feed a hair over what the input holds: neither speaks, or both do", () => {
    const hair = { ...small, process: "FCAW-S", wireFeedMPerMin: 7.15 } as const;
    expect(check(hair).map(({ code }) => code)).not.toContain("feed-beyond-input");
    expect(probability(run(hair), "input-power")).toBeLessThan(0.1);
    const over = { ...hair, wireFeedMPerMin: 9 };
    expect(check(over).map(({ code }) => code)).toContain("feed-beyond-input");
    expect(probability(run(over), "input-power")).toBeGreaterThan(0.9);
  });

  it("the process left out, the class says it", () => {
    const found = run({ ...small, wireFeedMPerMin: 9 });
    expect(found.contradictions.map(({ code }) => code)).toContain("feed-beyond-input");
    expect(found.firstChange?.causeId).toBe("input-power");
  });

  it("a wire or rod on AC, process unknown", () => {
    const found = run({ electrodeClass: "ER70S-6", polarity: "AC" });
    expect(found.contradictions.map(({ causeId }) => causeId)).toContain("polarity");
    expect(found.causes[0]?.id).toBe("polarity");
  });

  it("plate a tenth over its cap, and half a millimetre", () => {
    const at = (thicknessMm: number) => ({ ...small, thicknessMm });
    const speaks = (thicknessMm: number) => ({
      check: check(at(thicknessMm)).some(({ code }) => code === "plate-above-cap"),
      cause: probability(run(at(thicknessMm)), "base-cold-thick") > 0.05,
    });
    expect(speaks(8)).toEqual({ check: false, cause: false });
    expect(speaks(8.5)).toEqual({ check: true, cause: true });
  });
});
