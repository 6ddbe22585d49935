import "server-only";

export { archiveOf, archiveSentence, MOST_ARCHIVE_BYTES } from "./export-beads";
export { jobsAlong } from "./export-jobs";
export { checkArchive, importArchive, importSentence } from "./import-beads";
