import "server-only";

export { attachPhoto, letGoPhoto } from "./attach-photo";
export type { BeadRecord } from "./bead-record";
export {
  addPhoto,
  createBead,
  getBead,
  listBeads,
  nextBeadNumber,
  removePhoto,
  saveBead,
  type NewPhoto,
} from "./beads";
export {
  deleteBead,
  deletedBeadThing,
  deletionRefusal,
  eraseDeletedBeads,
  KEPT_DAYS,
  listDeletedBeads,
  restoreBead,
  type DeletedBeadRecord,
} from "./deleted-beads";
export { numbersOfBeads } from "./numbers";
export { photoColumn } from "./photo-column";
export { sealedViews, sealViews } from "./seal-views";
export { beadThing, photoThings } from "./things";
