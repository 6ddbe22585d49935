export {
  BEAD_JUDGEMENT_VERSION,
  BeadContentSchema,
  BeadJudgementSchema,
  beadQuantities,
  BeadReadingSchema,
  emptyBeadContent,
  emptyBeadJudgement,
  newPhotoContent,
  photoRoles,
  type BeadContent,
  type BeadJudgement,
  type BeadQuantity,
  type BeadReading,
  type PhotoFacts,
  type PhotoRole,
} from "./bead";
export { mergeContent } from "./merge-content";
