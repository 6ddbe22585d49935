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
 * Tables
 * - `csv-malformed`: not CSV by RFC 4180 from row `data.row` on (`data.problem`).
 *
 * Annotations
 * - `annotation-malformed`: not a Web Annotation at `path` (`data.problem`).
 * - `annotation-other-photo`: its target is another picture (`data.source`).
 * - `annotation-selector`: the area is given in a form other than SVG (`data.selector`).
 * - `annotations-too-many`: `data.found` of at most `data.most`.
 * - `svg-too-large`: `data.characters` of at most `data.most`.
 * - `svg-refused`: it holds something an area has no use for (`data.what`): a script, a DOCTYPE, a foreign element.
 * - `svg-unreadable`: not well formed (`data.problem`).
 * - `svg-shape`: an element or geometry we have no mark for (`data.what`).
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
  "csv-malformed",
  "annotation-malformed",
  "annotation-other-photo",
  "annotation-selector",
  "annotations-too-many",
  "svg-too-large",
  "svg-refused",
  "svg-unreadable",
  "svg-shape",
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
