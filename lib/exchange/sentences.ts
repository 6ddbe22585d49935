import type { ExchangeIssue, ExchangeIssueCode } from "./issue";

type Data = ExchangeIssue["data"];

/** One sentence per code: what is the matter, and what to do. */
export const exchangeSentences: Readonly<Record<ExchangeIssueCode, (data: Data) => string>> = {
  "not-json": () =>
    "This file is not JSON. Choose the file as it was exported, not a copy saved by another program.",
  "version-newer": ({ found, known }) =>
    `This file was written by a later version (${found}; this one reads up to ${known}). Update this installation, then import it again.`,
  "version-missing": () => "This is not a file exported from here: it does not say its version.",
  malformed: ({ problem }) =>
    `A value in this file is missing or out of bounds (${problem}). Export it again where it came from.`,
  "photo-unlisted": ({ photoId }) =>
    `There are marks for photo ${photoId}, which the file does not describe. Export it again where it came from.`,
  "id-twice": ({ id }) => `"${id}" stands twice in this file. Export it again where it came from.`,
  "archive-not-zip": () => "This file is not a ZIP archive, or its end is missing. Copy it again and retry.",
  "archive-unreadable": ({ name }) =>
    `"${name}" in this archive is damaged or packed in an unusual way. Export the archive again.`,
  "archive-too-large": ({ name, bytes, most }) =>
    `"${name}" unpacks to ${bytes} bytes or more; at most ${most} are read. Export fewer beads at a time.`,
  "archive-name-unsafe": ({ name }) =>
    `This archive holds a file named "${name}", which no export from here does. It was not unpacked.`,
  "archive-name-twice": ({ name }) => `"${name}" stands twice in this archive, so it was not unpacked.`,
  "archive-file-missing": ({ name }) => `"${name}" is missing from this archive. Export it again.`,
  "archive-file-unlisted": ({ name }) =>
    `This archive holds "${name}", which its list does not name. It was not unpacked.`,
  "archive-checksum": ({ name }) =>
    `"${name}" is not what it was when the archive was made. Do not rely on it as evidence; fetch the archive again.`,
};

export function exchangeSentence(found: ExchangeIssue): string {
  return exchangeSentences[found.code](found.data);
}
