import Papa from "papaparse";
import { guardText } from "./guard-cell";

/** null: not known, an empty cell. */
export type Cell = string | number | boolean | null;

export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
}

export interface CsvOptions {
  /** A byte order mark, by which some spreadsheets tell UTF-8. Other readers may trip over it. */
  readonly bom: boolean;
}

const BOM = "\uFEFF";

/** Numbers stay bare: a negative number is no formula. Text is guarded, yes and no are words. */
function cellText(cell: Cell): string | number {
  if (cell === null) return "";
  if (typeof cell === "number") return Number.isFinite(cell) ? cell : "";
  if (typeof cell === "boolean") return cell ? "yes" : "no";
  return guardText(cell);
}

function csvLines(rows: Table["rows"], columns: number): string {
  // A line of one empty cell would be a blank line, which readers skip: its quotes keep it.
  const quotes = (value: unknown): boolean => value === "" && columns === 1;
  if (rows.length === 0) return "";
  const csv = Papa.unparse(
    rows.map((row) => row.map(cellText)),
    { delimiter: ",", newline: "\r\n", quotes },
  );
  return `${csv}\r\n`;
}

/** What a CSV begins with: the mark and the header row. `csvRows` of all rows, in parts of any size, make it whole. */
export function csvHead(columns: Table["columns"], options: CsvOptions = { bom: true }): string {
  return `${options.bom ? BOM : ""}${csvLines([columns], columns.length)}`;
}

/** Some rows of a CSV, each line with its end. */
export function csvRows({ columns, rows }: Table): string {
  return csvLines(rows, columns.length);
}

/** CSV by RFC 4180: comma, CRLF, quotes where needed, a header row; encode it as UTF-8. @twice */
export function tableToCsv(table: Table, options: CsvOptions = { bom: true }): string {
  return csvHead(table.columns, options) + csvRows(table);
}
