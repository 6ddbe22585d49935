import { MAX_TYPED_LENGTH } from "./issue";

/** Other characters that phones and word processors put where a person typed the plain one. */
const plain: Readonly<Record<string, string>> = {
  "″": '"',
  "“": '"',
  "”": '"',
  "′": "'",
  "’": "'",
  "‘": "'",
  "−": "-",
  "–": "-",
  "⁄": "/",
  "³": "3",
  "\u00a0": " ",
  "\u202f": " ",
  "\u2009": " ",
};

/**
 * What was typed, in plain lower-case characters: "1½″" becomes `1 1/2"`. Text too long to be a number becomes "?",
 * which no parser understands, so that none spends time on it.
 */
export function tidy(text: string): string {
  if (text.trim().length > MAX_TYPED_LENGTH) return "?";
  return text
    .replace(/[¼-¾⅐-⅞]/g, (vulgar) => ` ${vulgar.normalize("NFKC")}`)
    .replace(/./gsu, (character) => plain[character] ?? character)
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
}
