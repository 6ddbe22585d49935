export { readBead, type StoredBead } from "./bead-doors";
export { LeftHere, SendLeftWork } from "./left-here";
export { LinkWhenSent } from "./link-when-sent";
export { NewBeadHere } from "./new-bead-here";
export type { KeptBeadSaving } from "./kept-saving";
export { useKeptBead } from "./use-kept-bead";
export { WaitingPhotos } from "./waiting-photos";
export { WhoProvider } from "./who";
export { ForgetPages, WorkerHere } from "./worker-here";
