import type { Issue } from "@/lib/base";

/**
 * Files of beads
 * - `not-json`: the text is no JSON.
 * - `version-newer`: written by a later Toeline (`data.found`, `data.known`).
 * - `version-missing`: no schemaVersion, so this is another kind of file.
 * - `malformed`: the value at `path` is missing or outside its bounds (`data.problem`, the schema's code).
 * - `photo-unlisted`: marks for a photo the file does not describe (`data.photoId`).
 * - `id-twice`: two beads, photos or marks share `data.id`.
 *
 * Archives
 * - `archive-not-zip`, `archive-unreadable` (`data.name`): damaged, or packed in a way we do not read.
 * - `archive-too-large`: `data.bytes` of at most `data.most`, declared or found while unpacking (`data.name`).
 * - `archive-name-unsafe`: a file name that leads out of the archive or is not one of ours (`data.name`).
 * - `archive-name-twice`, `archive-file-missing`, `archive-file-unlisted` (`data.name`).
 * - `archive-checksum`: content that differs from what the manifest says (`data.name`).
 */
export const exchangeIssueCodes = [
  "not-json",
  "version-newer",
  "version-missing",
  "malformed",
  "photo-unlisted",
  "id-twice",
  "archive-not-zip",
  "archive-unreadable",
  "archive-too-large",
  "archive-name-unsafe",
  "archive-name-twice",
  "archive-file-missing",
  "archive-file-unlisted",
  "archive-checksum",
] as const;
export type ExchangeIssueCode = (typeof exchangeIssueCodes)[number];
export type ExchangeIssue = Issue<ExchangeIssueCode>;
