import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { diagnose, DiagnoseInputSchema, type DiagnoseInput, type Diagnosis } from "@/lib/diagnose";
import { setupArb } from "@/tests/lib/setup/setup-arbitrary";
import { inDepth } from "@/tests/setup/in-depth";

const wire = { process: "FCAW-G", electrodeClass: "E71T-1C", electrodeDiameterMm: 1.2 } as const;

const found = (setup: DiagnoseInput["setup"], bead: DiagnoseInput["bead"]): Diagnosis => {
  const input = DiagnoseInputSchema.parse({
    schemaVersion: 1,
    setup,
    findings: [{ imperfection: "undercut", place: "upper-toe", stretch: "whole-length", patterns: [] }],
  });
  const answer = diagnose({ ...input, bead });
  if (!answer.ok) throw new Error(answer.issues[0]?.code);
  return answer.value;
};

/** Fillets whose feed is known, on any layer, with everything else as it comes. */
const fillets = setupArb.chain((setup) =>
  fc.record({
    setup: fc.constant({ ...setup, ...wire, joint: "tee" as const, wireFeedMPerMin: 8 }),
    layer: fc.integer({ min: 2, max: 12 }),
    legMm: fc.double({ min: 2, max: 25, noNaN: true }),
    widthMm: fc.double({ min: 3, max: 35, noNaN: true }),
  }),
);

const chances = ({ causes }: Diagnosis) => causes.map(({ id, probability }) => [id, probability]);

describe("the size of a weld laid in layers", () => {
  it("moves no cause and no advice: it holds the metal of all of them", () => {
    fc.assert(
      fc.property(fillets, ({ setup, layer, legMm, widthMm }) => {
        const over = { ...setup, passCount: layer };
        const unmeasured = found(over, { widthMm: null, legMm: null, lengthMm: null });
        const measured = found(over, { widthMm, legMm, lengthMm: null });
        expect(chances(measured)).toEqual(chances(unmeasured));
        expect(measured.firstChange).toEqual(unmeasured.firstChange);
        expect(measured.estimates).toEqual(unmeasured.estimates);
        expect(measured.estimates.map(({ quantity }) => quantity)).not.toContain("leg from feed and travel");
      }),
      { seed: 47, numRuns: inDepth(40, 400) },
    );
  });

  it("tells of the travel where the run is the first in its joint", () => {
    const setup = DiagnoseInputSchema.parse({ schemaVersion: 1, setup: {}, findings: [] }).setup;
    const first = { ...setup, ...wire, joint: "tee" as const, wireFeedMPerMin: 8, passCount: 1 };
    const none = { widthMm: null, legMm: null, lengthMm: null };
    expect(chances(found(first, { ...none, legMm: 14 }))).not.toEqual(chances(found(first, none)));
    expect(chances(found(first, { ...none, widthMm: 20 }))).not.toEqual(chances(found(first, none)));
  });

  it("is not held against the leg asked for while more passes are to come", () => {
    const setup = DiagnoseInputSchema.parse({ schemaVersion: 1, setup: {}, findings: [] }).setup;
    const run = { ...setup, ...wire, joint: "tee" as const, travelSpeedMmPerMin: 300 };
    const reasons = (targetLegMm: number) =>
      found({ ...run, targetLegMm }, { widthMm: null, legMm: 7, lengthMm: null }).causes.flatMap(({ why }) =>
        why.map(({ key }) => key),
      );
    expect(reasons(10)).toContain("reading:leg");
    expect(reasons(16)).not.toContain("reading:leg");
  });
});
