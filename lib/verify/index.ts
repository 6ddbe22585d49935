import "server-only";

export { lastChecked, noteChecked } from "./checked";
export { proofSentence, proveEntry, readProof, type LogProof } from "./log-proof";
export { verifyRecords, type Verification } from "./verify";
