import type { LedgerIssue } from "./issue";

type Data = LedgerIssue["data"];

/** One sentence per finding: what does not fit, and where. */
export const ledgerSentences: Readonly<Record<LedgerIssue["code"], (data: Data) => string>> = {
  "entry-missing": ({ seq }) => `Log entry ${seq} is missing: the numbers jump over it.`,
  "entry-changed": ({ seq, subject }) =>
    `Log entry ${seq} (${subject}) was changed after it was written: its hash is not that of its text.`,
  "entry-does-not-follow": ({ seq }) =>
    `Log entry ${seq} does not follow the one before it: the chain breaks here.`,
  "time-runs-back": ({ seq }) =>
    `Log entry ${seq} is dated before the entry it follows: the machine's clock was put back. The order of the log is that of its numbers.`,
  "state-changed": ({ subject }) =>
    `${subject} is not as the log last recorded it: it was changed behind the program's back.`,
  "state-missing": ({ subject }) => `${subject} is gone, and the log does not say that anybody removed it.`,
  "state-unlogged": ({ subject }) =>
    `${subject} is there, and the log does not say who made it. Entries may have been cut off the log's end.`,
  "photo-changed": ({ sha256, beads }) =>
    `The original photo ${sha256} (${beads}) was changed: its bytes no longer give its digest.`,
  "photo-missing": ({ sha256, beads }) => `The original photo ${sha256} (${beads}) is missing.`,
  "view-changed": ({ sha256, size, beads }) =>
    `The picture shown of photo ${sha256} (${size}, ${beads}) is missing or not the one that was made from the original. Only the original is evidence.`,
  "row-dangling": ({ table, of }) =>
    `The table ${table} holds a row that belongs to a ${of} which is not there: it was put in or moved behind the program's back.`,
  "facts-differ": ({ number }) =>
    `What lists and figures say of bead ${number} is not what follows from the bead. The bead itself is not touched by that: open it and save it, and it is worked out again.`,
  "digest-twice": ({ subject }) =>
    `${subject} was frozen with one digest and has another now, or was frozen twice. What is frozen has one digest for ever: do not rely on it.`,
  "signature-bad": ({ subject, why }) => `No signature speaks for ${subject}: ${why}.`,
  "log-cut": ({ subject, seq, last }) =>
    `The log ends at entry ${last}, and a signature (${subject}) speaks of entry ${seq}: its end was cut off.`,
  "log-differs": ({ subject, seq }) =>
    `Entry ${seq} of the log is not the one that a signature (${subject}) speaks of: the log was written anew.`,
  "key-not-ours": ({ subject }) =>
    `${subject} is said to be this installation's key, and its private part does not lie in the data folder.`,
  "key-forgotten": ({ subject }) =>
    `The private part of ${subject} lies in the data folder, and the records know of no such key: what says that keys were kept was taken out.`,
  "noted-cut": ({ seq, last }) =>
    `The log ends at entry ${last}, and the head that was noted elsewhere is entry ${seq}: the log's end was cut off.`,
  "noted-differs": ({ seq }) =>
    `Entry ${seq} is not the one that was noted elsewhere: the log was written anew since.`,
  "text-changed": ({ subject }) =>
    `The frozen text of ${subject} was changed: it no longer gives the digest it was sealed with.`,
};

export function ledgerSentence(found: LedgerIssue): string {
  return ledgerSentences[found.code](found.data);
}
