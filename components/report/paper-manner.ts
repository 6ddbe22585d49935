import type { SheetDocument } from "@/lib/report";

/** With more letters than this, what usually has a line of its own stands one after the other, so that one page holds them. */
const OPEN_LETTERS = 2_850;

/** Letters of everything that is said, photos aside. */
function letters(value: unknown): number {
  if (typeof value === "string") return value.length;
  if (typeof value !== "object" || value === null) return 0;
  return Object.values(value).reduce((sum: number, part) => sum + letters(part), 0);
}

/**
 * How a browser prints the sheet: on one page in two columns, open or close, or one part below the other on as many pages as
 * it takes. A style sheet cannot try what fits, as the PDF does.
 */
export function paperManner(sheet: SheetDocument): "open" | "close" | "pages" {
  const { photos, ...said } = sheet;
  if (photos.length > 1 || photos.some(({ section }) => section)) return "pages";
  return letters(said) > OPEN_LETTERS ? "close" : "open";
}
