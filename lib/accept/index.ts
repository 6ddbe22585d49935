export { compareVerdicts } from "./compare-verdicts";
export { acceptTables, listCriteria, type CriteriaSummary } from "./criteria";
export { decide, spreadOf } from "./decide";
export type { LimitRange } from "./formula";
export { judgeInputJsonSchema } from "./json-schema";
export { judge } from "./judge";
export { acceptSentence } from "./sentences";
export { formulaText } from "./formula";
export { limitsOn, type LimitClause, type LimitsOfSet } from "./limits-on";
export {
  type BeadFigure,
  type Condition,
  type Constant,
  type Formula,
  type SymbolName,
  type Test,
} from "./rule";
export { patchPatterns } from "./size-of";
export { shopRowsFrom } from "./shop-copy";
export {
  readShopSetId,
  ShopCriteriaSchema,
  ShopKeySchema,
  shopQuantities,
  shopSetId,
  type NotCarried,
  type ShopCriteria,
  type ShopQuantity,
  type ShopRow,
} from "./shop-criteria";
export {
  BeadReadingsSchema,
  JudgeInputSchema,
  weldKinds,
  type BeadReadings,
  type JudgeInput,
  type WeldKind,
} from "./types";
export { type WeldFactName } from "./weld-fact-names";
export {
  type AcceptIssue,
  type Contradiction,
  type ContradictionCode,
  type GaugeId,
  type MissingQuantity,
  type MissingReading,
  type RowLimit,
  type RowReason,
  type RowResult,
  type Verdict,
  type VerdictRow,
} from "./verdict";
