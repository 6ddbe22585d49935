export { ArchiveCheck } from "./archive-check";
export { actionText, detailPhrases, logSubject, type LogSubject } from "./log-words";
export { VerifyPanel } from "./verify-panel";
