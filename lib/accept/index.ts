export { compareVerdicts, type RowDifference, type VerdictComparison } from "./compare-verdicts";
export { acceptTables, listCriteria, type CriteriaSummary } from "./criteria";
export { decide, spreadOf, type Decision, type DecisionRule } from "./decide";
export type { LimitRange } from "./formula";
export { judgeInputJsonSchema } from "./json-schema";
export { judge } from "./judge";
export { acceptSentence, acceptSentences } from "./sentences";
export { patchPatterns } from "./size-of";
export { shopRowsFrom, type ShopCopy } from "./shop-copy";
export {
  readShopSetId,
  SHOP_CRITERIA_VERSION,
  ShopCriteriaSchema,
  ShopKeySchema,
  shopQuantities,
  ShopRowSchema,
  shopSetId,
  type ShopCriteria,
  type ShopQuantity,
  type ShopRow,
} from "./shop-criteria";
export {
  BeadReadingsSchema,
  JudgeInputSchema,
  ObservationSchema,
  WeldFactsSchema,
  weldKinds,
  type BeadReadings,
  type JudgeInput,
  type Observation,
  type WeldFacts,
  type WeldKind,
} from "./types";
export { weldFactNames, type WeldFactName } from "./weld-fact-names";
export {
  contradictionCodes,
  gaugeIds,
  missingQuantities,
  rowResults,
  verdicts,
  type AcceptIssue,
  type AcceptIssueCode,
  type Contradiction,
  type ContradictionCode,
  type CriteriaSetting,
  type GaugeId,
  type MissingQuantity,
  type MissingReading,
  type RowLimit,
  type RowReason,
  type RowResult,
  type UnusedReading,
  type Verdict,
  type VerdictRow,
} from "./verdict";
