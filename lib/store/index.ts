import "server-only";

export { adoptUnlogged } from "./adopt";
export { guardStore } from "./guard-store";
export { clockBehindMs, sha256Text, stateDigest, writeLog, writeLogs } from "./log";
export { isNewId, newId } from "./new-id";
export { writing, type Log, type Pen } from "./pen";
export { countLoggedSubjects, latestDigests, loggedSubjects, logParts, newestEntries } from "./read-log";
export type { RecordIssue } from "./record-issue";
export { recordSentence } from "./sentences";
export { readSetting, writeSetting } from "./settings";
export { allSubjects, isLoggedKind, subjectSlices, subjectState } from "./subjects";
