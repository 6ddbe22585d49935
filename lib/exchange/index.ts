export { archiveManifest, archivePhotoName, type ArchiveManifest } from "./archive-manifest";
export { ExchangeBeadSchema, ExchangePhotoSchema, type ExchangeBead, type ExchangePhoto } from "./bead-file";
export { beadAnnotations } from "./bead-annotations";
export { beadsFileJsonSchema, BeadsFileSchema, serialiseBeadsFile } from "./beads-file";
export { beadTable } from "./bead-table";
export { type ExchangeIssue } from "./issue";
export {
  ExchangeInstrumentSchema,
  ExchangeJobSchema,
  noJobs,
  type ExchangeInspection,
  type ExchangeJob,
  type JobsAlong,
} from "./job-file";
export { markTable } from "./mark-table";
export { packArchive } from "./pack-archive";
export { exchangeSentence } from "./sentences";
export { tableToCsv } from "./table";
export { unpackArchive, type UnpackedArchive } from "./unpack-archive";
