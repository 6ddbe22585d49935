export { causeIds, type CauseId } from "./cause-ids";
export {
  DiagnoseInputSchema,
  FindingSchema,
  ShopCountsSchema,
  type DiagnoseInput,
  type ShopCounts,
} from "./input";
export {
  evidenceKinds,
  unitKinds,
  type Amount,
  type Answer,
  type Caution,
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
