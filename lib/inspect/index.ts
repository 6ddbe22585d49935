export { acceptedBeyond } from "./accepted-beyond";
export { beadRows, sectionRows, bothText, ruleOf } from "./bead-rows";
export { decisionRuleText } from "./decision-rule";
export { emptyInspection, InspectionDraftSchema, type InspectionDraft } from "./draft";
export {
  AskedExtentSchema,
  LONGEST_WELD_MM,
  readExtentText,
  SeenExtentSchema,
  wholeWeld,
  type Extent,
} from "./extent";
export { extentStanding, type ExtentStanding, type WeldPart } from "./extent-standing";
export { extentText, weldPartText } from "./extent-text";
export {
  calibrationDoubt,
  calibrationOn,
  instrumentKinds,
  instrumentLabel,
  instrumentNames,
  InstrumentSchema,
  type Calibration,
  type Instrument,
  type InstrumentKind,
} from "./instrument";
export { JobContentSchema, type JobContent, type JobPart, type JobWeld } from "./job";
export { lookedAt } from "./looked-at";
export { makeRecord, openPoints, readRecord, sealRecord, type RecordInput } from "./make-record";
export { movedSince, type BeadNow } from "./moved-since";
export { openWelds, type OpenWeld } from "./open-welds";
export { pointWeights, type PointCode, type PointIssue } from "./point-weights";
export { inspectionPoints } from "./points";
export { readingDoubts, readingsByGauge, type GaugeDoubt, type ReadingDoubt } from "./reading-doubts";
export { recordChanges } from "./record-changes";
export { recordSections, resultNames, type RecordRow, type RecordSection } from "./record-sections";
export { pointSentence, pointSentences, pointWeight, statement } from "./sentences";
export { signBead, type InspectedBead } from "./sign-bead";
export {
  results,
  SignedRecordSchema,
  type InspectionResult,
  type Signature,
  type SignedBead,
  type SignedRecord,
} from "./signed-record";
export { weldExtent, weldResults, worst, type WeldsInput } from "./weld-results";
export { recordListSource, viewingLimits } from "./viewing-limits";
