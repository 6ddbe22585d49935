import "server-only";

export { backupSentence } from "./issue";
export { makeBackup } from "./make-backup";
export { lastBackup, nightlyPlan, noteBackup, writeNightlyPlan, type NightlyPlan } from "./nightly-plan";
export { isOverdue, newestCopy, nightlyName, staleCopies } from "./nightly";
export { restoreBackup } from "./restore-backup";
export { backUpAside, watchNights, type Within } from "./aside";
export { runAside } from "./run-aside";
export { chosenIssues } from "./target";
