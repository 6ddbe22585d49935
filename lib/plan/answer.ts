import type { Source } from "@/lib/base";
import { procedureNumbers, type ProcedureNumbers } from "@/lib/procedure";
import { findingSentence, showReading, type RunSetup } from "@/lib/setup";
import { inch, metric, type UnitPreferences } from "@/lib/units";
import type { PlanAsk } from "./ask";
import { compare, type Comparisons, type Variant } from "./compare";
import type { Given } from "./gives";
import type { PlanIssue } from "./issues";
import { planRun, type Plan } from "./plan-run";
import { legsAtPaces, plateRange, secondsFor25mm, type PlateRange } from "./reverse";
import { knobReason, limitSentence, planIssueSentence, platesSentence, waySentence } from "./sentences";
import { waysOut } from "./ways-out";

interface Refusal {
  readonly code: string;
  readonly field: string;
  readonly sentence: string;
}

/** A plan with its words, for whoever reads it without this program. SI units; sentences in the units of the dials. */
export interface PlanAnswer {
  /** null: there is none; `refusals` say why. */
  readonly plan: AnsweredPlan | null;
  readonly refusals: readonly Refusal[];
  /** Carbon equivalents, preheat and cooling time of the steel for this run; null without a steel or a plan. */
  readonly procedure: ProcedureNumbers | null;
  /** What would make it go; empty where it goes. */
  readonly ways: readonly { readonly code: string; readonly ask: PlanAsk; readonly sentence: string }[];
  /** The plates this wire and input carry; null where too little is known to say. */
  readonly plates: AnsweredPlates | null;
  readonly comparisons: Readonly<Record<keyof Comparisons, readonly AnsweredVariant[]>>;
}

type AnsweredPlan = Omit<Plan, "knobs" | "limits" | "notes"> & {
  readonly secondsFor25mm: number;
  readonly knobs: readonly (Plan["knobs"][number] & { readonly sentence: string })[];
  readonly limits: readonly { readonly code: string; readonly sentence: string; readonly source: Source }[];
  readonly notes: readonly { readonly code: string; readonly sentence: string; readonly source: Source }[];
  readonly legsAtPaces: ReturnType<typeof legsAtPaces>;
};
type AnsweredPlates = Pick<PlateRange, "thinnestMm" | "thickestMm"> & { readonly sentence: string };
interface AnsweredVariant {
  readonly ask: Pick<PlanAsk, "electrodeClass" | "electrodeDiameterMm" | "gas" | "inputPower">;
  readonly setup: Pick<RunSetup, "wireFeedMPerMin" | "volts" | "ctwdMm" | "travelSpeedMmPerMin"> | null;
  readonly passes: number | null;
  readonly gives: readonly Given[];
  readonly refusal: Refusal | null;
}

/** Everything that can be said about what is asked. */
export function planAnswer(ask: PlanAsk): PlanAnswer {
  const units = ask.dials === "inch" ? inch : metric;
  const planned = planRun(ask);
  const refusals = planned.ok ? [] : planned.issues.map((issue) => refusalOf(issue, units));
  const tooLittle = !planned.ok && planned.issues.some(({ code }) => code === "field-needed");
  const compared: Comparisons = tooLittle ? { inputs: [], gases: [], wires: [] } : compare(ask);
  const plates = tooLittle ? null : plateRange(ask);
  return {
    plan: planned.ok ? answered(planned.value, units) : null,
    refusals,
    procedure: planned.ok ? procedureOf(planned.value, ask) : null,
    ways:
      planned.ok || tooLittle
        ? []
        : waysOut(ask).map((way) => ({ ...way, sentence: waySentence(way, units) })),
    plates: plates && {
      thinnestMm: plates.thinnestMm,
      thickestMm: plates.thickestMm,
      sentence: platesSentence(plates, units),
    },
    comparisons: {
      inputs: compared.inputs.map((one) => variantOf(one, units)),
      gases: compared.gases.map((one) => variantOf(one, units)),
      wires: compared.wires.map((one) => variantOf(one, units)),
    },
  };
}

function procedureOf({ setup, gives }: Plan, { steel }: PlanAsk): ProcedureNumbers | null {
  const heat = gives.find(({ code }) => code === "heat-input");
  if (steel === null || heat === undefined || setup.baseMetal === "stainless") return null;
  const run = { heatKJPerMm: heat.value, thicknessMm: setup.thicknessMm!, joint: setup.joint! };
  return procedureNumbers(steel, run);
}

const refusalOf = (issue: PlanIssue, units: UnitPreferences): Refusal => ({
  code: issue.code,
  field: String(issue.path[0] ?? ""),
  sentence: planIssueSentence(issue, units),
});

function answered(plan: Plan, units: UnitPreferences): AnsweredPlan {
  return {
    ...plan,
    secondsFor25mm: secondsFor25mm(plan.setup.travelSpeedMmPerMin!),
    knobs: plan.knobs.map((knob) => ({ ...knob, sentence: knobReason(knob) })),
    limits: plan.limits.map((limit) => ({
      code: limit.code,
      sentence: limitSentence(limit, units),
      source: limit.source,
    })),
    notes: plan.notes.map((note) => ({
      code: note.code,
      sentence: findingSentence(note, showReading(units)),
      source: note.source,
    })),
    legsAtPaces: legsAtPaces(plan.setup),
  };
}

function variantOf({ ask, run, issue }: Variant, units: UnitPreferences): AnsweredVariant {
  const { electrodeClass, electrodeDiameterMm, gas, inputPower } = ask;
  return {
    ask: { electrodeClass, electrodeDiameterMm, gas, inputPower },
    setup: run && {
      wireFeedMPerMin: run.setup.wireFeedMPerMin,
      volts: run.setup.volts,
      ctwdMm: run.setup.ctwdMm,
      travelSpeedMmPerMin: run.setup.travelSpeedMmPerMin,
    },
    passes: run?.passes ?? null,
    gives: run?.gives ?? [],
    refusal: issue && refusalOf(issue, units),
  };
}
