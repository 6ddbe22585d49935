import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { assessBead, openOfPlan, plannedBead, ranAsPlanned } from "@/lib/assess";
import { jobFields } from "@/lib/assess/planned-bead";
import { askOfSetup, planRun, PlanAskSchema } from "@/lib/plan";
import { askedFields } from "@/lib/plan/ask";
import { emptyBeadContent } from "@/lib/assess";
import { emptyRunSetup, exampleSetups, setupFields, type RunSetup, type SetupField } from "@/lib/setup";

const plans: readonly RunSetup[] = exampleSetups.flatMap(({ setup }) => {
  const made = planRun(PlanAskSchema.parse(askOfSetup(setup)));
  return made.ok ? [made.value.setup] : [];
});
const fields = Object.keys(setupFields) as SetupField[];
const isJob = (field: SetupField): boolean => (jobFields as readonly SetupField[]).includes(field);
const arbPlan = fc.constantFrom(...plans);
/** What somebody may have typed in before: any part of another plan. */
const arbTyped = fc
  .tuple(arbPlan, fc.subarray(fields))
  .map(([other, some]) => Object.fromEntries(some.map((field) => [field, other[field]])));

describe("a bead that is begun from a plan", () => {
  it("takes for the job what a plan is asked by, but for what a hand sets: transfer, gas, polarity", () => {
    const byHand = askedFields.filter((field) => !isJob(field));
    expect(byHand).toEqual(["transfer", "gas", "polarity"]);
    expect(jobFields.filter((field) => !(askedFields as readonly SetupField[]).includes(field))).toEqual([]);
  });

  it("says which job it is, and of how it is run nothing: the plan stands beside", () => {
    expect(plans.length).toBeGreaterThan(5);
    for (const plan of plans) {
      const { setup, judgement } = plannedBead(plan);
      for (const field of fields) expect(setup[field], field).toBe(isJob(field) ? plan[field] : null);
      expect(judgement.planned).toEqual(plan);
      expect(setup.polarity ?? setup.volts ?? setup.wireFeedMPerMin ?? setup.travelSpeedMmPerMin).toBeNull();
    }
  });

  it("gives no evidence: a plan on the wrong pole raises no cause while nobody said that it was run so", () => {
    const plan = {
      ...plans.find(({ electrodeClass }) => electrodeClass === "E71T-11")!,
      polarity: "DCEP" as const,
    };
    const causes = (content: typeof emptyBeadContent) =>
      assessBead({ content, photos: [] }).assessment.setup.map(({ code }) => code);
    const planned = { ...emptyBeadContent, ...plannedBead(plan) };
    expect(causes(planned)).not.toContain("polarity-against-class");
    const ran = { ...planned, setup: ranAsPlanned(planned.setup, plan) };
    expect(causes(ran)).toContain("polarity-against-class");
  });

  it("was run as planned where the person says so; what they typed stays, and nothing is open after", () => {
    fc.assert(
      fc.property(arbPlan, arbTyped, (plan, typed) => {
        const setup: RunSetup = { ...plannedBead(plan).setup, ...typed };
        const ran = ranAsPlanned(setup, plan);
        for (const field of fields) expect(ran[field]).toBe(setup[field] ?? plan[field]);
        expect(openOfPlan(ran, plan)).toEqual([]);
        expect(new Set(openOfPlan(setup, plan))).toEqual(
          new Set(fields.filter((field) => setup[field] === null && plan[field] !== null)),
        );
      }),
      { seed: 8, numRuns: 100 },
    );
  });

  it("has nothing open without a plan", () => {
    expect(openOfPlan(emptyRunSetup, null)).toEqual([]);
    expect(openOfPlan(emptyRunSetup, undefined)).toEqual([]);
  });
});
