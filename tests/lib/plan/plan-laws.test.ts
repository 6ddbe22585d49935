import { describe, expect, it } from "vitest";
import { planRun, PlanAskSchema, type Plan, type PlanAsk } from "@/lib/plan";
import { brokenPlans, brokenSteps } from "./broken-plans";
import { grid, gridSize } from "./grid";
import { complaints, laws, planner, stepComplaints, type Planner } from "./laws";
import { inDepth } from "../../setup/in-depth";

/** Every so many-th ask of the grid; the long run walks it closer. */
function sweep(every: number): { asks: number; plans: number; wrong: readonly string[] } {
  let [asks, plans] = [0, 0];
  const wrong: string[] = [];
  for (const ask of grid(every)) {
    asks += 1;
    const planned = planner(ask);
    if (!planned.ok) {
      if (planned.issues.length === 0) wrong.push(`refused without a reason: ${JSON.stringify(ask)}`);
      continue;
    }
    plans += 1;
    wrong.push(...complaints(planned.value, ask).map((text) => `${text} ${JSON.stringify(ask)}`));
  }
  return { asks, plans, wrong };
}

/** One ask from sheet to plate in tenths of a millimetre: the plans of each, null where there is none. */
function walk(plan: Planner, ask: PlanAsk): readonly (Plan | null)[] {
  return Array.from({ length: 110 }, (_, i) => {
    const planned = plan({ ...ask, thicknessMm: 1 + i / 10 });
    return planned.ok ? planned.value : null;
  });
}

function stepsOf(plans: readonly (Plan | null)[]): { steps: number; wrong: readonly string[] } {
  const pairs = plans.slice(1).flatMap((next, i) => {
    const before = plans[i];
    return before && next ? [[before, next] as const] : [];
  });
  return { steps: pairs.length, wrong: pairs.flatMap(([a, b]) => stepComplaints(a, b)) };
}

const ask = (part: Partial<PlanAsk>): PlanAsk => PlanAskSchema.parse(part);
const t11: Partial<PlanAsk> = { electrodeClass: "E71T-11", electrodeDiameterMm: 0.9, position: "horizontal" };
const walked: readonly PlanAsk[] = [
  ask({ ...t11, joint: "tee", inputPower: "230V" }),
  ask({ ...t11, joint: "lap", inputPower: "120V", targetLegMm: 4 }),
  ask({ ...t11, joint: "tee", position: "overhead" }),
  ask({
    electrodeClass: "E71T-1M",
    electrodeDiameterMm: 1.2,
    gas: "75Ar-25CO2",
    joint: "tee",
    position: "flat",
    dials: "inch",
  }),
  ask({ electrodeClass: "E308LT0-3", electrodeDiameterMm: 0.9, joint: "lap", position: "flat" }),
];

describe("every plan of the grid", () => {
  it("keeps the laws", () => {
    const { asks, plans, wrong } = sweep(inDepth(72007, 6007));
    console.log(`${gridSize} asks in the grid, ${asks} asked, ${plans} planned`);
    expect(wrong).toEqual([]);
    expect(plans).toBeGreaterThan(inDepth(10, 150));
  });

  it.each(Object.entries(brokenPlans))("would not with a fault put in: %s", (_, { planner: broken, law }) => {
    const found = new Set<string>();
    for (const one of [...faultAsks, ...walked.map((each) => ({ ...each, thicknessMm: 5 }))]) {
      const planned = broken(one);
      if (!planned.ok) continue;
      for (const [name, holds] of Object.entries(laws))
        if (holds(planned.value, one).length > 0) found.add(name);
    }
    expect([...found]).toContain(law);
  });
});

const faultAsks: readonly PlanAsk[] = [
  ask({ ...t11, joint: "tee", inputPower: "120V", thicknessMm: 5.9 }),
  ask({ ...t11, joint: "tee", inputPower: "230V", thicknessMm: 6, targetLegMm: 6.5 }),
  ask({ ...t11, joint: "tee", inputPower: "120V", thicknessMm: 6 }),
];

describe("neighbours, a tenth of a millimetre of plate apart", () => {
  it.each(walked.slice(0, inDepth(1, walked.length)))(
    "never jump, and thicker plate never wants less: $electrodeClass $joint $position",
    (one) => {
      const { steps, wrong } = stepsOf(walk(planRun, one));
      expect(wrong).toEqual([]);
      expect(steps).toBeGreaterThan(20);
    },
  );

  it.each(Object.entries(brokenSteps))("would with a fault put in: %s", (_, { planner: broken, says }) => {
    const { wrong } = stepsOf(walk(broken, walked[0]!));
    expect(wrong.filter((text) => says.test(text)).length).toBeGreaterThan(0);
  });
});

describe("one thing changed", () => {
  const order = (values: readonly number[]) => values.toSorted((a, b) => a - b);

  it("a larger leg never takes fewer passes, nor a faster hand", () => {
    for (const wire of [walked[0]!, walked[3]!]) {
      const plans = [3, 4, 5, 6, 7, 8, 10, 12, 14].flatMap((targetLegMm) => {
        const planned = planRun({ ...wire, thicknessMm: 6, targetLegMm });
        return planned.ok ? [planned.value] : [];
      });
      expect(plans.length).toBeGreaterThan(7);
      const passes = plans.map((plan) => plan.passes);
      expect(passes).toEqual(order(passes));
      expect(passes.at(-1)).toBeGreaterThan(1);
      const single = plans.filter((plan) => plan.passes === 1).map(({ setup }) => setup.travelSpeedMmPerMin!);
      expect(single).toEqual(order(single).reverse());
    }
  });

  it("a stronger input never gives less, and what goes on a weak one goes on a strong one", () => {
    for (const thicknessMm of [1.5, 2, 3, 4, 5, 5.9]) {
      const feeds = (["120V", "230V", "400V-3ph"] as const).map((inputPower) => {
        const planned = planRun({ ...walked[0]!, thicknessMm, inputPower });
        expect(planned.ok).toBe(true);
        return planned.ok ? planned.value.setup.wireFeedMPerMin! : NaN;
      });
      expect(feeds).toEqual(order(feeds));
    }
  });

  it("out of position the feed stands under flat, as the trade's 30 to 40 % ask", () => {
    for (const wire of [walked[0]!, walked[3]!])
      for (const thicknessMm of [4, 5, 6]) {
        const flat = planRun({ ...wire, position: "flat", thicknessMm });
        const over = planRun({ ...wire, position: "overhead", thicknessMm });
        if (!flat.ok || !over.ok) continue;
        const cut = 1 - over.value.wantedAmps / flat.value.wantedAmps;
        expect(cut).toBeGreaterThanOrEqual(0.3);
        expect(cut).toBeLessThanOrEqual(0.4);
        expect(over.value.setup.wireFeedMPerMin!).toBeLessThan(flat.value.setup.wireFeedMPerMin!);
      }
  });
});
