export { planAnswer, type PlanAnswer } from "./answer";
export { askedFields, askOfSetup, emptyPlanAsk, PlanAskSchema, setupOfAsk, type PlanAsk } from "./ask";
export { compare, type Variant } from "./compare";
export { givenText } from "./given-text";
export { dialStep, insideOf, onDial, turnedRange } from "./inside";
export { planRun, type Plan } from "./plan-run";
export { planQuery, readPlanQuery } from "./query";
export { legsAtPaces, plateRange, secondsFor25mm } from "./reverse";
export {
  knobReason,
  knobText,
  limitSentence,
  planIssueSentence,
  platesSentence,
  waySentence,
} from "./sentences";
export { planJsonSchema, planVocabulary } from "./vocabulary";
export { waysOut } from "./ways-out";
