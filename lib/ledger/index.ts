export { compareStates } from "./compare-states";
export { nextEntry, type LogEntry } from "./entry";
export type { ContentIssue, LedgerIssue, StateIssue } from "./issue";
export { ledgerSentence } from "./sentences";
export { chainWalk, type ChainEnd } from "./verify-chain";
