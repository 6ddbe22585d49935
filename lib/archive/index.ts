import "server-only";

export {
  archiveOf,
  archiveSentence,
  MOST_ARCHIVE_BEADS,
  MOST_ARCHIVE_BYTES,
  tooMany,
  type ArchiveRefusal,
} from "./export-beads";
export { jobsAlong } from "./export-jobs";
export { seriesAlong } from "./export-series";
export { checkArchive, importArchive, importSentence } from "./import-beads";
