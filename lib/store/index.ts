import "server-only";

export { adoptUnlogged } from "./adopt";
export { guardStore } from "./guard-store";
export { sha256Text, stateDigest, writeLog, writeLogs } from "./log";
export { isNewId, newId } from "./new-id";
export { writing, type Log, type Pen } from "./pen";
export { allEntries, newestEntries } from "./read-log";
export type { RecordIssue } from "./record-issue";
export { recordSentence } from "./sentences";
export { readSetting, writeSetting } from "./settings";
export { allSubjects, subjectState } from "./subjects";
