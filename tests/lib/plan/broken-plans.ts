import { ok } from "@/lib/base";
import { planRun, type Plan, type PlanAsk } from "@/lib/plan";
import type { RunSetup } from "@/lib/setup";
import type { Planner } from "./laws";

const altered =
  (change: (plan: Plan, ask: PlanAsk) => Plan): Planner =>
  (ask) => {
    const planned = planRun(ask);
    return planned.ok ? ok(change(planned.value, ask)) : planned;
  };
const withSetup = (plan: Plan, part: Partial<RunSetup>): Plan => ({
  ...plan,
  setup: { ...plan.setup, ...part },
});
const dial = (field: "wireFeedMPerMin" | "volts" | "ctwdMm", factor: number): Planner =>
  altered((plan) => withSetup(plan, { [field]: plan.setup[field]! * factor }));

/** Faults put into the planner on purpose, each with the law that must catch it. */
export const brokenPlans: Readonly<Record<string, { readonly planner: Planner; readonly law: string }>> = {
  "feed a third up": { planner: dial("wireFeedMPerMin", 1.33), law: "insideRows" },
  "volts a fifth up": { planner: dial("volts", 1.2), law: "insideRows" },
  "tip to work doubled": { planner: dial("ctwdMm", 2), law: "insideRows" },
  "the mains forgotten": {
    planner: (ask) =>
      altered((plan) => withSetup(plan, { inputPower: ask.inputPower }))({ ...ask, inputPower: null }),
    law: "underInput",
  },
  "wrong pole": {
    planner: altered((plan) =>
      withSetup(plan, { polarity: plan.setup.polarity === "DCEN" ? "DCEP" : "DCEN" }),
    ),
    law: "checkIsSilent",
  },
  "pushed on slag": {
    planner: altered((plan) => withSetup(plan, { travelDirection: "push" })),
    law: "checkIsSilent",
  },
  "a note kept back": { planner: altered((plan) => ({ ...plan, notes: [] })), law: "checkIsSilent" },
  "ranges twice as wide": {
    planner: altered((plan) => ({
      ...plan,
      knobs: plan.knobs.map((knob) => ({
        ...knob,
        low: 2 * knob.low - knob.value,
        high: 2 * knob.high - knob.value,
      })),
    })),
    law: "rangesHold",
  },
  "two passes for one": {
    planner: altered((plan) => ({ ...plan, passes: plan.passes + 2 })),
    law: "passesOnlyWhereNeeded",
  },
  "arc energy without the minutes": {
    planner: altered((plan) => ({
      ...plan,
      gives: plan.gives.map((one) =>
        one.code === "arc-energy" ? { ...one, value: one.value / 60, low: 0.001 } : one,
      ),
    })),
    law: "figuresAgree",
  },
  "leg from another travel": {
    planner: altered((plan) =>
      withSetup(plan, { travelSpeedMmPerMin: plan.setup.travelSpeedMmPerMin! * 1.2 }),
    ),
    law: "figuresAgree",
  },
};

/** Faults that only neighbours show. */
export const brokenSteps: Readonly<Record<string, { readonly planner: Planner; readonly says: RegExp }>> = {
  "feed in steps of two metres": {
    planner: altered((plan) =>
      withSetup(plan, { wireFeedMPerMin: Math.round(plan.setup.wireFeedMPerMin! / 2) * 2 }),
    ),
    says: /jump: feed/,
  },
  "volts off the nearest row": {
    planner: altered((plan) =>
      withSetup(plan, { volts: plan.setup.volts! + (plan.setup.wireFeedMPerMin! > 5 ? 1 : 0) }),
    ),
    says: /jump: volts/,
  },
  "thicker plate, less feed": {
    planner: altered((plan) =>
      withSetup(plan, { wireFeedMPerMin: plan.setup.wireFeedMPerMin! * (1 - 0.1 * plan.setup.thicknessMm!) }),
    ),
    says: /less feed/,
  },
  "thicker plate, less wanted": {
    planner: altered((plan) => ({ ...plan, wantedAmps: 300 - plan.wantedAmps })),
    says: /wants less/,
  },
};
