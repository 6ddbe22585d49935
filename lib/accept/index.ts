export { decide, spreadOf, type Decision } from "./decide";
export type { LimitRange } from "./formula";
export { listCriteria } from "./criteria";
export { judgeInputJsonSchema } from "./json-schema";
export { judge } from "./judge";
export { acceptSentence, acceptSentences } from "./sentences";
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
export { weldFactNames, type WeldFactName } from "./weld-facts-asked";
export {
  gaugeIds,
  missingQuantities,
  rowResults,
  verdicts,
  type AcceptIssue,
  type AcceptIssueCode,
  type CriteriaSetting,
  type CriteriaSummary,
  type GaugeId,
  type MissingQuantity,
  type MissingReading,
  type RowLimit,
  type RowReason,
  type RowResult,
  type Verdict,
  type VerdictRow,
} from "./verdict";
