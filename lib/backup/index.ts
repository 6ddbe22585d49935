import "server-only";

export { backupSentence, type BackupIssue } from "./issue";
export { makeBackup, type MadeBackup } from "./make-backup";
export { lastBackup, nightlyPlan, noteBackup, writeNightlyPlan, type NightlyPlan } from "./nightly-plan";
export { isOverdue, newestCopy, nightlyName, staleCopies } from "./nightly";
export { restoreBackup, type Restored } from "./restore-backup";
export { backUpAside, watchNights } from "./aside";
export { targetIssues } from "./target";
