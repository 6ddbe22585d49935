/**
 * What a machine may ask: reads one case for `diagnose`, `judge`, `measure` or `plan` and answers it, or says line by line what
 * is wrong with it. The command line and the HTTP doors are shells around this room, so both say the same.
 */
export type { CaseAnswer } from "./case-answer";
export { MOST_CASE_BYTES, readCaseText, tooLarge } from "./case-text";
export {
  answerCase,
  caseJsonSchema,
  caseVocabulary,
  type CaseContext,
  type Door,
  type DoorValue,
} from "./doors";
export { shopSetAsked } from "./shop-set-asked";
