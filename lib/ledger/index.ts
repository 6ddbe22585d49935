export { compareStates } from "./compare-states";
export { nextEntry, type LogEntry } from "./entry";
export type { ContentIssue, LedgerIssue } from "./issue";
export { ledgerSentence } from "./sentences";
export { verifyChain } from "./verify-chain";
