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
export { sectionSentence, sectionSentences } from "./sentences";
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
