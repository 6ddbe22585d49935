import { planAnswer, PlanAskSchema, type PlanAnswer } from "@/lib/plan";
import type { CaseAnswer } from "./case-answer";
import { readCase } from "./read-case";

/** A starting set-up for one run, or why there is none. That there is none is an answer too. */
export function answerPlan(json: unknown): CaseAnswer<PlanAnswer> {
  const read = readCase(PlanAskSchema, json);
  return read.ok ? { ok: true, value: planAnswer(read.value) } : read;
}
