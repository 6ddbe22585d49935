import { z } from "zod";
import { inputPowers } from "@/lib/trade";
import { emptyPlanAsk, PlanAskSchema } from "./ask";
import { givenUnits } from "./gives";
import { planCodes } from "./issues";
import { knobReasons } from "./knobs";
import { limitCodes } from "./plan-run";
import { plannedJoints } from "./tables/figures";

/** JSON Schema (draft 2020-12) of what `plan` takes. */
export function planJsonSchema(): object {
  return z.toJSONSchema(PlanAskSchema, { io: "input" });
}

/** Every word the door for machines understands and answers with. */
export function planVocabulary() {
  return {
    fields: Object.keys(emptyPlanAsk),
    joints: plannedJoints,
    inputPowers,
    gives: Object.entries(givenUnits).map(([code, unit]) => ({ code, unit })),
    knobReasons,
    limits: limitCodes,
    refusals: planCodes,
  };
}
