import "server-only";

export { attachPhoto, letGoPhoto } from "./attach-photo";
export type { BeadRecord } from "./bead-record";
export {
  addPhoto,
  createBead,
  makeBead,
  nextBeadNumber,
  removePhoto,
  saveBead,
  type NewPhoto,
} from "./beads";
export { factsDiffering } from "./facts-differ";
export { factsStamp, keepAssessed, keepFacts } from "./keep-facts";
export { getBead, getBeads, MOST_AT_ONCE, readBead } from "./read-bead";
export { staleBeads, unreadableBeads, unreadableStamp, staleFacts } from "./stale";
export { workAgain, workInBackground, workNow } from "./work-again";
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
export { sealViews, viewSealsIn } from "./seal-views";
export { beadThing, photoThings } from "./things";
