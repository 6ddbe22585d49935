export { alignPhoto, type AlignedPhoto } from "./align-photo";
export { applyChange } from "./apply-change";
export { confirmedCounts } from "./confirmed-counts";
export { marksAcrossPhotos, weldLengthMm, type NumberedMark, type PhotoMeasures } from "./across-photos";
export {
  assess,
  defaultAssessContext,
  type AssessContext,
  type Assessment,
  type PhotoAssessment,
} from "./assess";
export {
  BEAD_JUDGEMENT_VERSION,
  BeadContentSchema,
  BeadJudgementSchema,
  BeadReadingSchema,
  emptyBeadContent,
  emptyBeadJudgement,
  newPhotoContent,
  outcomes,
  photoRoles,
  seams,
  TriedChangeSchema,
  WeldQuestionsSchema,
  type BeadContent,
  type BeadJudgement,
  type BeadReading,
  type Outcome,
  type PhotoFacts,
  type PhotoRole,
  type Seam,
  type TriedChange,
  type WeldQuestions,
} from "./bead";
export { layPair, VIEW_WIDTH, type LaidPair, type LaidPhoto } from "./lay-pair";
export { mergeContent } from "./merge-content";
export { diagnoseInput } from "./diagnose-input";
export { judgeBeside } from "./judge-beside";
export { assessSection, sectionSetsFor, type SectionAssessment } from "./assess-section";
export { editSection, type SectionAction } from "./edit-section";
export {
  emptyPhotoSection,
  PhotoSectionSchema,
  sectionJointOf,
  sectionOf,
  type PhotoSection,
} from "./photo-section";
export { judgeInput } from "./judge-input";
export { nextSectionStep, type SectionStep } from "./section-step";
export { weldKind } from "./weld-kind";
export { proposal, type Proposal } from "./proposal";
