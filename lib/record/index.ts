import "server-only";

export { adoptUnlogged } from "./adopt";
export {
  addPerson,
  changePerson,
  getPerson,
  listPeople,
  notePassphrase,
  personNames,
  removePerson,
  setAccount,
  type PersonRecord,
} from "./people";
export { placesOfName, type NamePlace } from "./name-places";
export { newestEntries, numbersOfBeads } from "./read-log";
export { sealViews } from "./seal-views";
export { verifyRecords } from "./verify";

export { addPhoto, createBead, getBead, listBeads, removePhoto, saveBead } from "./beads";
export { attachPhoto } from "./attach-photo";
export { sha256Text, writeLog } from "./log";
export { type Pen } from "./pen";
export { beadThing, photoThings } from "./things";
export { readSetting, writeSetting } from "./preferences";
export { recordSentence } from "./sentences";
export { deleteSetup, lastSetup, listSavedSetups, saveSetup, type SavedSetupRecord } from "./setups";
export { resetShopCounts, shopCounts } from "./shop-counts";
export type { BeadRecord, RecordIssue } from "./types";
export {
  BeadFilterSchema,
  filterFields,
  filterQuery,
  readFilter,
  UNKNOWN,
  type BeadFilter,
} from "./bead-filter";
export { findBeads, type FoundBeads } from "./find-beads";
export { type ObservedBead } from "./observations";
export { deleteFilter, listSavedFilters, saveFilter } from "./filters";
export { archiveOf, archiveSentence, MOST_ARCHIVE_BYTES } from "./export-beads";
export { jobsAlong } from "./export-jobs";
export { checkArchive, importArchive, importSentence } from "./import-beads";
export {
  addStudent,
  closeGroup,
  createGroup,
  getGroup,
  joinGroup,
  leaveGroup,
  listGroups,
  type GroupRecord,
} from "./groups";
export {
  createExercise,
  exerciseByCode,
  getExercise,
  listExercises,
  saveExercise,
  setExerciseOpen,
  type ExerciseRecord,
} from "./exercises";
export { handInBead, HandInFormSchema, handInPhoto, takingExercise, withdrawHandIn } from "./hand-ins";
export { getHandIn, handInBySecret, handInThing, listHandIns, type HandInRecord } from "./read-hand-ins";
export { getFeedback, replyToFeedback, returnFeedback, saveFeedback } from "./feedback";
export { addPhrase, changePhrase, deletePhrase, listPhrases, movePhrase } from "./phrases";
export { assessContext } from "./assess-context";
export {
  getShopSet,
  listShopSets,
  newestVersions,
  saveShopSet,
  shopSetsToChoose,
  withdrawShopSet,
} from "./criteria";
export { attachBead, createJob, getJob, listJobs, saveJob } from "./jobs";
export { addInstrument, changeInstrument, listInstruments, retireInstrument } from "./instruments";
export {
  correctInspection,
  createInspection,
  draftRecord,
  getInspection,
  jobBeads,
  listInspections,
  saveInspection,
} from "./inspections";
export { listSigned, seenDigest, signerName, signInspection } from "./signed";
