import "server-only";

export {
  addPhoto,
  createBead,
  deleteBead,
  getBead,
  listBeads,
  removePhoto,
  saveBead,
  type NewPhoto,
} from "./beads";
export { sha256Text, stateDigest, writeLog, type LogLine, type LogWords } from "./log";
export { newId } from "./new-id";
export { writing, type Log, type Pen } from "./pen";
export { beadThing, photoThings } from "./things";
export { allSubjects, subjectOf, subjectState, type SubjectKind } from "./subjects";
export { readSetting, writeSetting } from "./preferences";
export { recordSentence, recordSentences } from "./sentences";
export { deleteSetup, lastSetup, listSavedSetups, saveSetup, type SavedSetupRecord } from "./setups";
export { resetShopCounts, shopCounts } from "./shop-counts";
export type { BeadRecord, PhotoRecord, RecordIssue } from "./types";
