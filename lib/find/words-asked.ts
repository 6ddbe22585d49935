import { electrodeWords } from "@/lib/facts";

export interface WordsAsked {
  readonly numbers: readonly number[];
  /** All of these lists, of each list one at least; what holds several words means them in a row. */
  readonly words: readonly (readonly string[])[];
}

/**
 * What stands in quotation marks, the last of them still open while somebody types, or a word. A mark opens at a word's
 * beginning and closes at a word's end alone: the inch of 3/4" plate opens nothing.
 */
const PART = /["“”„«»]\s*([^"“”„«»]*)(?:["“”«»](?=\s|$)|$)|\S+/gu;

/**
 * Words that must all be there, each by its beginning; in quotation marks those words in a row. "#12" is the bead of that
 * number. A wire is found as it was asked for and as the tables write it.
 */
export function wordsAsked(q: string | undefined): WordsAsked {
  const parts = [...(q ?? "").normalize("NFKC").toLowerCase().matchAll(PART)].map(
    ([whole, inARow]): { readonly text: string; readonly number: number | null } => ({
      text: (inARow ?? whole).trim().replace(/\s+/g, " "),
      number: /^#\d{1,9}$/.test(whole) ? Number(whole.slice(1)) : null,
    }),
  );
  return {
    numbers: parts.flatMap(({ number }) => number ?? []),
    words: parts
      .filter(({ text, number }) => number === null && /[\p{L}\p{N}]/u.test(text))
      .map(({ text }) => [...new Set(electrodeWords(text))]),
  };
}
