export { answeredWords } from "./answered";
export { basisOf, type Basis } from "./basis";
export { causeIds } from "./cause-ids";
export { answersTo, diagnose } from "./diagnose";
export { diagnoseTables } from "./diagnose-tables";
export { DiagnoseInputSchema, type DiagnoseInput, type ShopCounts } from "./input";
export { likelyMarks } from "./likely-marks";
export { diagnoseSentences, type DiagnoseIssue } from "./issues";
export {
  type Amount,
  type Change,
  type Check,
  type Diagnosis,
  type RankedCause,
  type Statement,
  type UnitKind,
  type WhyItem,
} from "./types";
export { usualCauses, whyCauseless, type UsualCause } from "./usual-causes";
export { usualShare } from "./usual-share";
export { diagnoseJsonSchema, diagnoseVocabulary } from "./vocabulary";
export { wouldChange } from "./would-change";
