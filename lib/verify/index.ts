import "server-only";

export { lastChecked, noteChecked } from "./checked";
export { proofSentence, proveEntry, readProof, type LogProof } from "./log-proof";
export { isRemark, verifyRecords, walkRecords, type Verification } from "./verify";
export { walkParts, type Part, type WalkStep } from "./walk";
