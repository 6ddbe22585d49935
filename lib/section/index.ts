export {
  edgeRolesOf,
  emptySectionDrawing,
  SECTION_VERSION,
  SectionDrawingSchema,
  sectionEdgeRoles,
  sectionJoints,
  type SectionDrawing,
  type SectionEdgeRole,
  type SectionJoint,
} from "./drawing";
export { edgesNeeded, sectionFigures, type SectionFigureInfo } from "./figure-names";
export { measureSection } from "./measure-section";
export { missingSentence } from "./missing-sentences";
export { edgeNames, sectionSentence, sectionSentences } from "./sentences";
export {
  sectionFigureIds,
  type SectionFigureId,
  type SectionFigures,
  type SectionIssue,
  type SectionIssueCode,
  type SectionKnown,
  type SectionMeasures,
  type SectionPlaces,
} from "./types";
export { judgeSection } from "./judge-section";
export type { SectionGiven, SectionMissing, SectionRow, SectionVerdict } from "./judgement";
export type { LimitSymbol, SectionCriteriaSet, SectionCriterion } from "./criteria";
export { etchingCaution, sectionReportFields, type ReportField } from "./tables/report-fields";
export { sectionSets } from "./tables/macro-sets";
