import type { Issue } from "@/lib/base";
import { ledgerSentence, type LedgerIssue } from "@/lib/ledger";

/** What is found beside what the verifier finds: files and rows that belong to nothing, or are not finished. */
export type OwnDataIssue = Issue<
  | "database-damaged"
  | "migration-open"
  | "trigger-missing"
  | "stray-original"
  | "stray-views"
  | "odd-file"
  | "left-uploads"
  | "left-aside"
  | "meta-differs"
  | "facts-stale"
  | "row-unreadable"
>;
export type DataIssue = OwnDataIssue | LedgerIssue;
type Code = DataIssue["code"];
type Data = DataIssue["data"];

const ownSentences: Readonly<Record<OwnDataIssue["code"], (data: Data) => string>> = {
  "database-damaged": ({ reason }) => `The database file is damaged: ${reason}.`,
  "migration-open": ({ name }) =>
    `The database is not of this version: the change "${name}" was not made to it, or was not made whole.`,
  "trigger-missing": ({ name }) =>
    `The database lacks its guard "${name}", which keeps what is frozen from being changed by mistake.`,
  "stray-original": ({ sha256 }) =>
    `The photo ${sha256} lies in the store, and nothing names it: an upload was cut off before its bead knew of it.`,
  "stray-views": ({ sha256 }) => `Pictures made from photo ${sha256} lie there without their original.`,
  "odd-file": ({ name }) => `photos/${name} is nothing that this program puts there.`,
  "left-uploads": ({ count }) =>
    count === 1 ? "One upload was cut off half-way." : `${count} uploads were cut off half-way.`,
  "left-aside": ({ name }) => `The folder ${name} was left by something that was cut off.`,
  "meta-differs": ({ sha256, beads }) =>
    `What is noted beside photo ${sha256} (${beads}) is missing, cannot be read, or is not that photo's.`,
  "facts-stale": ({ count }) =>
    `What lists and figures say of ${count === 1 ? "one bead" : `${count} beads`} is still to be worked out.`,
  "row-unreadable": ({ number }) => `The record of bead ${number} cannot be read any more.`,
};

/** What may be put right without losing or inventing anything, and how. */
const mends: Readonly<Partial<Record<Code, string>>> = {
  "stray-original": "put aside, where it stays for 30 days",
  "stray-views": "removed, as it was made from an original that is not here",
  "left-uploads": "cleared away",
  "left-aside": "cleared away",
  "meta-differs": "made anew from the original",
  "view-changed": "made anew from the original, where the same picture comes of it",
  "facts-stale": "worked out",
  "facts-differ": "worked out again from the bead",
};

const restore =
  "Not mended here: nothing may be invented. Keep this folder, and bring back the last good backup into an empty one: npm run -s restore -- BACKUP";
const ways: Readonly<Partial<Record<Code, string>>> = {
  "odd-file": "Left as it is: look what it is, and move it away yourself.",
  "time-runs-back": "Nothing to do: the order of the log is its numbers, not its times.",
  "migration-open": "Start Toeline once: it brings the database up to date.",
  "trigger-missing":
    "Somebody took it out. The records themselves are checked apart from it; bring back a backup.",
};

export const canMend = ({ code }: DataIssue): boolean => Object.hasOwn(mends, code);

/** What is wrong, and what can be done about it, or was. */
export function dataSentence(found: DataIssue, isMended = false): string {
  const own = Object.hasOwn(ownSentences, found.code);
  const what = own
    ? ownSentences[(found as OwnDataIssue).code](found.data)
    : ledgerSentence(found as LedgerIssue);
  const mend = mends[found.code];
  if (mend) return `${what} It ${isMended ? `was ${mend}` : `can be ${mend} (--mend)`}.`;
  return `${what} ${ways[found.code] ?? restore}`;
}
