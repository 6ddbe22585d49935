/** What a cell of a study's sheet is typed in. */
export type CellUnit = "mm" | "in" | "deg";

export const MM_PER_INCH = 25.4;
const NUMBER = /^[-\u2212+]?(\d+([.,]\d*)?|[.,]\d+)$/;

/** One cell as a number in mm or degrees; null where it is empty or no plain number. A comma is a decimal point. */
export function readCell(text: string, unit: CellUnit): number | null {
  const typed = text.trim();
  if (!NUMBER.test(typed)) return null;
  const value = Number(typed.replace(",", ".").replace("\u2212", "-"));
  return unit === "in" ? value * MM_PER_INCH : value;
}

/**
 * What a spreadsheet put on the clipboard, as rows of cells: tabs part them, else semicolons, else blanks. Empty lines at
 * the end fall away; nothing is read as a number here.
 */
export function pastedCells(text: string): readonly (readonly string[])[] {
  const rows = text.replace(/\r\n?/g, "\n").replace(/\n+$/, "").split("\n");
  const parted = text.includes("\t") ? "\t" : text.includes(";") ? ";" : /[ \u00a0]+/;
  return rows.map((row) => (parted === "\t" ? row : row.trim()).split(parted).map((cell) => cell.trim()));
}
