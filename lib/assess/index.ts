export { alignPhotos, type AlignedPhoto } from "./align-photo";
export { answerKind, isAnswer, type AnswerKind } from "./answer-kind";
export { applyChange } from "./apply-change";
export { countBeadPoints } from "./count-bead-points";
export { confirmedCounts, knownCounts } from "./confirmed-counts";
export { marksAcrossPhotos, type NumberedMark } from "./across-photos";
export {
  assess,
  defaultAssessContext,
  measurePhotos,
  type AssessContext,
  type Assessment,
  type PhotoAssessment,
} from "./assess";
export { assessBead, assessedPhotos, type Assessed } from "./assessed-bead";
export {
  BeadContentSchema,
  BeadJudgementSchema,
  emptyBeadContent,
  emptyBeadJudgement,
  newPhotoContent,
  outcomes,
  photoRoles,
  seams,
  TriedChangeSchema,
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
export { isPlanned } from "./is-planned";
export { openOfPlan, plannedBead, ranAsPlanned, saysHowRun } from "./planned-bead";
export { layPair, layRow, VIEW_WIDTH, type LaidPhoto } from "./lay-pair";
export { mergeContent } from "./merge-content";
export { judgeBeside } from "./judge-beside";
export { sectionSetsFor, type SectionAssessment } from "./assess-section";
export { editSection, type SectionAction } from "./edit-section";
export { emptyPhotoSection, PhotoSectionSchema, sectionOf, type PhotoSection } from "./photo-section";
export { sealedTables } from "./sealed-tables";
export { nextBead } from "./next-bead";
export { nextSectionStep, type SectionStep } from "./section-step";
export { weldKind } from "./weld-kind";
export { proposal, type Proposal } from "./proposal";
