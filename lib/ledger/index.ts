export { compareStates, latestDigests } from "./compare-states";
export {
  CHAIN_START,
  entryHash,
  LogEntrySchema,
  nextEntry,
  type LogDraft,
  type LogEntry,
  type TextSha256,
} from "./entry";
export type { ChainIssue, ContentIssue, LedgerIssue, StateIssue } from "./issue";
export { ledgerSentence, ledgerSentences } from "./sentences";
export { verifyChain } from "./verify-chain";
