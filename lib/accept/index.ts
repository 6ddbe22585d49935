export { listCriteria } from "./criteria";
export { judgeInputJsonSchema } from "./json-schema";
export { judge } from "./judge";
export { acceptSentence, acceptSentences } from "./sentences";
export {
  SHOP_CRITERIA_VERSION,
  ShopCriteriaSchema,
  shopQuantities,
  ShopRowSchema,
  type ShopCriteria,
  type ShopQuantity,
  type ShopRow,
} from "./shop-criteria";
export {
  BeadReadingsSchema,
  gaugeIds,
  JudgeInputSchema,
  missingQuantities,
  ObservationSchema,
  rowResults,
  verdicts,
  WeldFactsSchema,
  weldKinds,
  type AcceptIssue,
  type AcceptIssueCode,
  type BeadReadings,
  type CriteriaSetting,
  type CriteriaSummary,
  type GaugeId,
  type JudgeInput,
  type MissingQuantity,
  type MissingReading,
  type Observation,
  type RowLimit,
  type RowReason,
  type RowResult,
  type Verdict,
  type VerdictRow,
  type WeldFacts,
  type WeldKind,
} from "./types";
