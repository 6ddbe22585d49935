import { judgeInputJsonSchema, listCriteria, type ShopCriteria, type Verdict } from "@/lib/accept";
import { diagnoseJsonSchema, diagnoseVocabulary, type Diagnosis } from "@/lib/diagnose";
import { measureCaseJsonSchema, measureVocabulary, type MeasureReport } from "@/lib/measure";
import { planJsonSchema, planVocabulary, type PlanAnswer } from "@/lib/plan";
import { answerDiagnose } from "./answer-diagnose";
import { answerJudge } from "./answer-judge";
import { answerMeasure } from "./answer-measure";
import { answerPlan } from "./answer-plan";
import type { CaseAnswer } from "./case-answer";

export const doorNames = ["diagnose", "judge", "measure", "plan"] as const;
export type Door = (typeof doorNames)[number];

/** What each door answers with. */
export interface DoorValue {
  readonly diagnose: Diagnosis;
  readonly judge: Verdict;
  readonly measure: MeasureReport;
  readonly plan: PlanAnswer;
}

/** What stands around a case: only the HTTP door has a store to look in. */
export interface CaseContext {
  /** The limits that `shopSetAsked` names. */
  readonly shop: ShopCriteria | null;
}

type Answers = { readonly [D in Door]: (json: unknown, context: CaseContext) => CaseAnswer<DoorValue[D]> };
const answers: Answers = {
  diagnose: (json) => answerDiagnose(json),
  judge: (json, { shop }) => answerJudge(json, shop),
  measure: (json) => answerMeasure(json),
  plan: (json) => answerPlan(json),
};

/** Reads, checks and answers one case; what is wrong comes back as lines "path: sentence". Never throws on any JSON. */
export function answerCase<D extends Door>(
  door: D,
  json: unknown,
  context: CaseContext = { shop: null },
): CaseAnswer<DoorValue[D]> {
  return answers[door](json, context);
}

const jsonSchemas: Readonly<Record<Door, () => object>> = {
  diagnose: diagnoseJsonSchema,
  judge: judgeInputJsonSchema,
  measure: measureCaseJsonSchema,
  plan: planJsonSchema,
};

/** The JSON Schema (draft 2020-12) of what a door takes. */
export function caseJsonSchema(door: Door): object {
  return jsonSchemas[door]();
}

const vocabularies: Readonly<Record<Door, () => unknown>> = {
  diagnose: () => diagnoseVocabulary(),
  judge: () => listCriteria(),
  measure: () => measureVocabulary(),
  plan: () => planVocabulary(),
};

/** Every word a door understands. */
export function caseVocabulary(door: Door): unknown {
  return vocabularies[door]();
}
