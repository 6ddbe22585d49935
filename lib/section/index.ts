export {
  edgeRolesOf,
  emptySectionDrawing,
  SectionDrawingSchema,
  sectionJoints,
  type SectionDrawing,
  type SectionEdgeRole,
  type SectionJoint,
} from "./drawing";
export { sectionFigures } from "./figure-names";
export { measureSection } from "./measure-section";
export { sectionSentence } from "./sentences";
export { sectionFigureIds, type SectionFigureId, type SectionMeasures, type SectionPlaces } from "./types";
export { judgeSection } from "./judge-section";
export type { SectionMissing, SectionRow, SectionVerdict } from "./judgement";
export { hasTwoUnitSystems, type SectionCriteriaSet } from "./criteria";
export { etchingCaution, sectionReportFields, type ReportField } from "./tables/report-fields";
export { sectionSets } from "./tables/macro-sets";
