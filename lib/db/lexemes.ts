/**
 * Words as SQLite's full text takes them (unicode61, marks over Latin letters off), for the database that is given them ready:
 * the same text finds the same beads on both.
 */

/** Letters, digits and characters of private use make words; everything else stands between them. */
const WORD = /[\p{L}\p{N}\p{Co}](?:[\p{L}\p{N}\p{Co}\u0300-\u0331])*/gu;

/** Lower case, and Latin letters without their marks. */
function folded(word: string): string {
  return word
    .toLowerCase()
    .normalize("NFD")
    .replace(/(\p{Script=Latin})\p{M}+/gu, "$1")
    .normalize("NFC")
    .replace(/[\u0300-\u0331]/gu, "");
}

/** The words of a text in their order. */
export function lexemes(text: string): readonly string[] {
  return (text.match(WORD) ?? []).map(folded).filter((word) => word !== "");
}

/** Places in a text are counted up to here; of what stands behind, no order of words is known. */
const LAST_PLACE = 16_383;
const MOST_PLACES = 255;

/** A text as PostgreSQL's tsvector writes itself: each word with its places. */
export function tokenVector(text: string): string {
  const places = new Map<string, number[]>();
  for (const [i, word] of lexemes(text).entries()) {
    const own = places.get(word) ?? [];
    if (own.length < MOST_PLACES) own.push(Math.min(i + 1, LAST_PLACE));
    places.set(word, own);
  }
  return [...places].map(([word, own]) => `'${word}':${[...new Set(own)].join(",")}`).join(" ");
}

/**
 * A question as PostgreSQL's tsquery: all of the lists, of each list one at least. What was asked as one word and is several
 * here ("E71T-1") is those in a row; the last by its beginning.
 */
export function prefixQuery(asked: readonly (readonly string[])[]): string {
  return asked
    .map((words) => {
      const rows = words.map(lexemes).filter((row) => row.length > 0);
      return `(${rows.map(inARow).join(" | ") || "'\uFFFF'"})`;
    })
    .join(" & ");
}

const inARow = (row: readonly string[]): string =>
  `(${row.map((word, i) => `'${word}'${i === row.length - 1 ? ":*" : ""}`).join(" <-> ")})`;
