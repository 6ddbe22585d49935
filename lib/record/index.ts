import "server-only";

export { adoptUnlogged } from "./adopt";
export {
  addPerson,
  changePerson,
  getPerson,
  listPeople,
  notePassphrase,
  personNames,
  PersonSchema,
  removePerson,
  setAccount,
  type PersonRecord,
} from "./people";
export { namePattern, placesOfName, type NamePlace } from "./name-places";
export { allEntries, newestEntries, numbersOfBeads } from "./read-log";
export { sealViews } from "./seal-views";
export { verifyRecords, type Verification } from "./verify";

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
export { attachPhoto, type Arriving, type Attached } from "./attach-photo";
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
export {
  BeadFilterSchema,
  beadOrders,
  filterFields,
  filterQuery,
  readFilter,
  UNKNOWN,
  verdictFilters,
  type BeadFilter,
  type ReadFilter,
} from "./bead-filter";
export { findBeads, fitsFilter, type FoundBeads } from "./find-beads";
export { observeBeads, type ObservedBead } from "./observations";
export { deleteFilter, listSavedFilters, saveFilter, type SavedFilterRecord } from "./filters";
export {
  archiveOf,
  archiveSentence,
  exchangeBeads,
  MOST_ARCHIVE_BYTES,
  type ArchiveRefusal,
} from "./export-beads";
export { jobsAlong } from "./export-jobs";
export type { PlannedJob } from "./import-jobs";
export {
  checkArchive,
  importArchive,
  importSentence,
  type ImportIssue,
  type ImportPlan,
  type PlannedBead,
} from "./import-beads";
export {
  addStudent,
  closeGroup,
  createGroup,
  getGroup,
  joinGroup,
  leaveGroup,
  listGroups,
  type GroupRecord,
  type StudentRecord,
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
export {
  handInBead,
  HandInFormSchema,
  handInPhoto,
  takingExercise,
  withdrawHandIn,
  type HandedIn,
  type HandInForm,
} from "./hand-ins";
export { getHandIn, handInBySecret, handInThing, listHandIns, type HandInRecord } from "./read-hand-ins";
export { getFeedback, replyToFeedback, returnFeedback, saveFeedback, type FeedbackRecord } from "./feedback";
export { addPhrase, changePhrase, deletePhrase, listPhrases, movePhrase, type PhraseRecord } from "./phrases";
export { assessContext } from "./assess-context";
export {
  getShopSet,
  listShopSets,
  newestVersions,
  saveShopSet,
  shopSetsToChoose,
  withdrawShopSet,
  type SavedSet,
  type ShopDraft,
  type ShopSetRecord,
} from "./criteria";
export { attachBead, createJob, getJob, listJobs, saveJob, type JobRecord } from "./jobs";
export {
  addInstrument,
  changeInstrument,
  listInstruments,
  retireInstrument,
  type InstrumentRecord,
} from "./instruments";
export {
  correctInspection,
  createInspection,
  draftRecord,
  getInspection,
  jobBeads,
  listInspections,
  saveInspection,
  type InspectionRecord,
} from "./inspections";
export {
  checkSigned,
  listSigned,
  seenDigest,
  signerName,
  signInspection,
  type SignedRevisionRecord,
  type Signing,
} from "./signed";
