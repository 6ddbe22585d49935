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

/** What was typed, in plain lower-case characters: "1½″" becomes `1 1/2"`. */
export function tidy(text: string): string {
  return text
    .replace(/[¼-¾⅐-⅞]/g, (vulgar) => ` ${vulgar.normalize("NFKC")}`)
    .replace(/./gsu, (character) => plain[character] ?? character)
    .replace(/\s+/g, " ")
    .trim()
    .toLowerCase();
}
