import "server-only";

export {
  correctInspection,
  createInspection,
  draftRecord,
  getInspection,
  inspectionPage,
  jobBeads,
  listInspections,
  newestOpen,
  saveInspection,
} from "./inspections";
export { addInstrument, changeInstrument, listInstruments, retireInstrument } from "./instruments";
export { attachBead, createJob, getJob, listJobs, saveJob, toJob } from "./jobs";
export { weldsNamed } from "./welds-named";
export {
  addStudy,
  getStudy,
  listStudies,
  studiesForReadings,
  withdrawStudy,
  type StudyRecord,
} from "./studies";
export { listSigned, seenDigest, signInspection } from "./signed";
export { weldsOf } from "./signer";
