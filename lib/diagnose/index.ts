export { causeIds, type CauseId } from "./cause-ids";
export { answersTo, diagnose } from "./diagnose";
export { diagnoseTables } from "./diagnose-tables";
export {
  DiagnoseInputSchema,
  FindingSchema,
  ShopCountsSchema,
  type DiagnoseInput,
  type ShopCounts,
} from "./input";
export { diagnoseCodes, diagnoseSentences, type DiagnoseCode, type DiagnoseIssue } from "./issues";
export {
  evidenceKinds,
  unitKinds,
  type Amount,
  type Answer,
  type Caution,
  type Causeless,
  type Change,
  type Check,
  type Confirmed,
  type Contradiction,
  type Diagnosis,
  type EvidenceKind,
  type JointExplanation,
  type RankedCause,
  type Statement,
  type UnitKind,
  type WhyItem,
} from "./types";
export { diagnoseJsonSchema, diagnoseVocabulary } from "./vocabulary";
export { weightsNote } from "./weights";
