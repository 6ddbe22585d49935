export { emptyInspection, InspectionDraftSchema, type InspectionDraft } from "./draft";
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
export { makeRecord, openPoints, readRecord, sealRecord, worst, type RecordInput } from "./make-record";
export { movedSince, type BeadNow } from "./moved-since";
export { inspectionPoints, lookedAt, pointWeights, type PointCode, type PointIssue } from "./points";
export { recordChanges } from "./record-changes";
export {
  beadRows,
  bothText,
  recordSections,
  resultNames,
  type RecordRow,
  type RecordSection,
} from "./record-sections";
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
export { recordListSource, viewingLimits } from "./viewing-limits";
