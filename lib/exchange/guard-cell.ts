/**
 * Spreadsheets take a cell that begins with one of these for a formula. Besides = + - @, tab and carriage return
 * (OWASP, "CSV Injection"), the full-width forms that some of them fold to ASCII, and the line feed.
 */
const FORMULA = "=+\\-@＝＋－＠";

/**
 * Where a guard goes: before a text that begins so, white space and quotes ignored, and before the same after a comma,
 * semicolon, tab or line break inside the text, because a program that splits at another separator than the file's
 * makes a cell begin there. An apostrophe counts as well, so that taking guards off again is exact.
 */
const GUARDED = new RegExp(`^(?=[" ]*['${FORMULA}]|[\\t\\r\\n])|(?<=[;,\\t\\r\\n])(?="*['${FORMULA}])`, "g");

/** Text that no spreadsheet takes for a formula: guarded by an apostrophe, as a spreadsheet marks text itself. */
export function guardText(text: string): string {
  return text.replace(GUARDED, "'");
}
