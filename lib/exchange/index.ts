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
export { canonicalJson } from "./canonical-json";
export { guardText, unguardText } from "./guard-cell";
export { exchangeIssueCodes, type ExchangeIssue, type ExchangeIssueCode } from "./issue";
export { parseBeadFile, serialiseBeadFile } from "./parse-bead-file";
export { exchangeSentence, exchangeSentences } from "./sentences";
export { parseCsv, tableToCsv, type Cell, type CsvOptions, type Table } from "./table";
