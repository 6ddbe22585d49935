import { describe, expect, it } from "vitest";
import { diagnose, DiagnoseInputSchema } from "@/lib/diagnose";
import { diagnoseWith } from "@/lib/diagnose/diagnose";
import { presentTuning, presentWeights, type Tuning, type Weights } from "@/lib/diagnose/tuning";

/** Invented: weak and strong links, a judged one, looks of both forces and a situation. */
const bead = DiagnoseInputSchema.parse({
  setup: { process: "FCAW-S", position: "vertical", progression: "up", joint: "tee" },
  findings: [
    { imperfection: "undercut", place: "upper-toe", patterns: ["weave-turns"] },
    { imperfection: "surface-porosity", patterns: ["clustered"] },
    { imperfection: "open-crater" },
    { imperfection: "convex-bead" },
    { imperfection: "trapped-slag", place: "both-toes" },
  ],
});

function causesUnder(tuning: Tuning): string {
  const result = diagnoseWith(bead, tuning);
  if (!result.ok) throw new Error("not diagnosed");
  return JSON.stringify(result.value.causes.map(({ id, probability }) => [id, probability]));
}

describe("tuning", () => {
  it("is at present what the product runs with", () => {
    expect(JSON.stringify(diagnoseWith(bead, presentTuning))).toBe(JSON.stringify(diagnose(bead)));
    // The same numbers in another object are built anew, to the same end.
    const copy = structuredClone(presentTuning);
    expect(causesUnder(copy)).toBe(causesUnder(presentTuning));
  });

  it.each<[string, Partial<Weights>]>([
    ["strength of links", { linkStrength: { ...presentWeights.linkStrength, middling: 0.4 } }],
    ["share of judged rows", { judgedShare: 0.5 }],
    ["leak", { leak: 0.05 }],
    ["leak of marks by nature", { leakByNature: 0.05 }],
    ["commonness", { commonness: { ...presentWeights.commonness, often: 0.06 } }],
    [
      "force of usual looks",
      { lookForce: { ...presentWeights.lookForce, usual: { favours: 1, opposes: 1 } } },
    ],
    [
      "force of clear looks",
      { lookForce: { ...presentWeights.lookForce, clear: { favours: 1, opposes: 1 } } },
    ],
  ])("reaches the ranking with its %s, and leaves the present one as it was", (_, changed) => {
    const before = causesUnder(presentTuning);
    expect(causesUnder({ ...presentTuning, weights: { ...presentWeights, ...changed } })).not.toBe(before);
    expect(causesUnder(presentTuning)).toBe(before);
  });

  it("reaches the advice with its limits", () => {
    const clear = DiagnoseInputSchema.parse({
      setup: { process: "FCAW-S", electrodeClass: "E71T-11", workAngleDeg: 60, joint: "tee" },
      findings: [{ imperfection: "undercut", place: "upper-toe" }],
    });
    const firstUnder = (limits: Partial<Tuning["limits"]>) => {
      const tuning = { ...presentTuning, limits: { ...presentTuning.limits, ...limits } };
      const result = diagnoseWith(clear, tuning);
      return result.ok ? (result.value.firstChange?.causeId ?? null) : "refused";
    };
    expect(firstUnder({})).toBe("work-angle");
    for (const limits of [
      { withMarks: 2, leadAlone: 1e6 },
      { withMarks: 2, faint: 2 },
      { lead: 1e6 },
      { worthTrying: 2 },
      { ownEvidence: 1e9 },
    ])
      expect([limits, firstUnder(limits)]).toEqual([limits, null]);
  });
});
