import type { Issue } from "@/lib/base";

export type ChainIssueCode = "entry-missing" | "entry-changed" | "entry-does-not-follow" | "time-runs-back";
export type StateIssueCode = "state-changed" | "state-missing" | "state-unlogged";
/** What is found outside the log: files, texts that carry their own digest, rows that belong to nothing or follow from others. */
export type ContentIssueCode =
  | "photo-changed"
  | "photo-missing"
  | "view-changed"
  | "text-changed"
  | "row-dangling"
  | "facts-differ"
  | "noted-cut"
  | "noted-differs"
  | SignatureIssueCode;
/** What signatures by key bear witness against. */
export type SignatureIssueCode =
  | "digest-twice"
  | "signature-bad"
  | "log-cut"
  | "log-differs"
  | "key-not-ours"
  | "key-forgotten";

export type ChainIssue = Issue<ChainIssueCode>;
export type StateIssue = Issue<StateIssueCode>;
export type ContentIssue = Issue<ContentIssueCode>;
export type LedgerIssue = ChainIssue | StateIssue | ContentIssue;
