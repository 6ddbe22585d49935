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

/** CSV by RFC 4180: comma, CRLF, quotes where needed, a header row; encode it as UTF-8. */
export function tableToCsv(table: Table, options: CsvOptions = { bom: true }): string {
  const lines = [table.columns, ...table.rows].map((row) => row.map(cellText));
  // A line of one empty cell would be a blank line, which readers skip: its quotes keep it.
  const quotes = (value: unknown): boolean => value === "" && table.columns.length === 1;
  const csv = Papa.unparse(lines, { delimiter: ",", newline: "\r\n", quotes });
  return `${options.bom ? BOM : ""}${csv}\r\n`;
}
