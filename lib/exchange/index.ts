export {
  ANNOTATION_CONTEXT,
  type Annotation,
  type AnnotationCollection,
  type AnnotationPage,
  type TextualBody,
} from "./annotation-types";
export { annotationsToMarks, type ImportedMark } from "./annotations-to-marks";
export {
  ARCHIVE_VERSION,
  archiveManifest,
  ArchiveManifestSchema,
  archivePhotoName,
  type ArchiveManifest,
} from "./archive-manifest";
export {
  BEAD_FILE_VERSION,
  beadFileJsonSchema,
  BeadFileSchema,
  ExchangeBeadSchema,
  ExchangePhotoSchema,
  Sha256Schema,
  type BeadFile,
  type ExchangeBead,
  type ExchangePhoto,
} from "./bead-file";
export { beadAnnotations } from "./bead-annotations";
export { beadsFileJsonSchema, BeadsFileSchema, serialiseBeadsFile, type BeadsFile } from "./beads-file";
export { beadTable } from "./bead-table";
export { canonicalJson } from "@/lib/base";
export { guardText, unguardText } from "./guard-cell";
export { exchangeIssueCodes, type ExchangeIssue, type ExchangeIssueCode } from "./issue";
export {
  ExchangeInstrumentSchema,
  ExchangeJobSchema,
  noJobs,
  type ExchangeInspection,
  type ExchangeInstrument,
  type ExchangeJob,
  type JobsAlong,
} from "./job-file";
export { markTable } from "./mark-table";
export { marksToAnnotations, type AnnotatedPhoto, type CollectionOptions } from "./marks-to-annotations";
export { MANIFEST_DIGEST_NAME, MANIFEST_NAME, packArchive, type Sha256 } from "./pack-archive";
export { parseBeadFile, serialiseBeadFile } from "./parse-bead-file";
export { photoIri } from "./photo-iri";
export { exchangeSentence, exchangeSentences } from "./sentences";
export { shapeToSvg, type Frame } from "./shape-to-svg";
export { svgToShape } from "./svg-to-shape";
export { parseCsv, tableToCsv, type Cell, type CsvOptions, type Table } from "./table";
export {
  unpackArchive,
  usualArchiveLimits,
  type ArchiveLimits,
  type UnpackedArchive,
} from "./unpack-archive";
