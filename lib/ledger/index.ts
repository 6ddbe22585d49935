export { compareStates } from "./compare-states";
export { entryHash, LogEntrySchema, nextEntry, type LogEntry } from "./entry";
export type { ContentIssue, LedgerIssue, StateIssue } from "./issue";
export { ledgerSentence } from "./sentences";
export {
  consistencyProof,
  inclusionProof,
  leafHash,
  treeRoot,
  verifyConsistency,
  verifyInclusion,
} from "./tree";
export { chainWalk, type ChainEnd } from "./verify-chain";
