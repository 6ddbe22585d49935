import "server-only";

export { attachPhoto, letGoPhoto } from "./attach-photo";
export type { BeadRecord } from "./bead-record";
export { addPhoto, createBead, getBead, listBeads, removePhoto, saveBead, type NewPhoto } from "./beads";
export { numbersOfBeads } from "./numbers";
export { photoColumn } from "./photo-column";
export { sealedViews, sealViews } from "./seal-views";
export { beadThing, photoThings } from "./things";
