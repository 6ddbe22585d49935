export { beadForWeld } from "./bead-for-weld";
export { acceptedBeyond } from "./accepted-beyond";
export { beadRows, sectionRows, ruleOf } from "./bead-rows";
export { emptyInspection, InspectionDraftSchema, type InspectionDraft } from "./draft";
export { LONGEST_WELD_MM, wholeWeld, type Extent } from "./extent";
export { extentStanding } from "./extent-standing";
export { extentText, weldPartText } from "./extent-text";
export {
  calibrationDoubt,
  calibrationOn,
  canBeStudied,
  daysInOrder,
  instrumentKinds,
  instrumentLabel,
  instrumentNames,
  InstrumentSchema,
  type Instrument,
  type InstrumentKind,
} from "./instrument";
export { JobContentSchema, JobFieldsSchema, type JobContent, type JobPart, type JobWeld } from "./job";
export { keyWords } from "./key-words";
export { drawSample, planText, sampleLots, type Sample, type SampleTake } from "./sample";
export { quantitiesAtBench, readingOf, withReading } from "./weld-readings";
export { weldChecklist, type CheckRow } from "./weld-checklist";
export { draftSaysMore, jobSaysMore, textHasStudy, textSaysMore } from "./later-fields";
export { lookedAt } from "./looked-at";
export { ranBySigner, weldNumbers, weldsRunBy } from "./ran-by-signer";
export { makeRecord, openPoints, sealRecord } from "./make-record";
export { movedSince } from "./moved-since";
export { openWelds } from "./open-welds";
export { bothText, type PaperUnits } from "./paper-units";
export { qualificationText, noQualification, type Qualification } from "./qualification";
export { photosNamed } from "./photos-named";
export { readRevision, type RevisionRow } from "./read-revision";
export { readingRows } from "./reading-rows";
export {
  instrumentCells,
  recordSections,
  resultNames,
  type RecordRow,
  type RecordSection,
} from "./record-sections";
export {
  inspectionState,
  resultTitle,
  revisionTitle,
  signedRole,
  signerWords,
  type Signed,
} from "./signed-words";
export { SignedRecordSchema, type SignedBead, type SignedRecord } from "./signed-record";
