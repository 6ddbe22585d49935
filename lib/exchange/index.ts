export {
  archiveManifest,
  archivePhotoName,
  serialiseManifest,
  type ArchiveManifest,
} from "./archive-manifest";
export { archiveReport } from "./archive-report";
export { ExchangeBeadSchema, ExchangePhotoSchema, type ExchangeBead, type ExchangePhoto } from "./bead-file";
export { beadAnnotations } from "./bead-annotations";
export { beadsFileJsonSchema, BeadsFileSchema, beadsFileText } from "./beads-file";
export { beadTable, judgedCells, type JudgedCells, type TableBead } from "./bead-table";
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
export {
  ExchangeCardSchema,
  ExchangeTrialSchema,
  noSeries,
  type ExchangeCard,
  type ExchangeTrial,
  type SeriesAlong,
} from "./series-file";
export { digestLine, MANIFEST_DIGEST_NAME, MANIFEST_NAME } from "./pack-archive";
export { storedZip, type ZipEntry } from "./stored-zip";
export { exchangeSentence } from "./sentences";
export { csvHead, csvRows, type Table } from "./table";
export { unpackSteps, type UnpackedArchive } from "./unpack-archive";
