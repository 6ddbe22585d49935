import { imperfectionIds, imperfections, type Imperfection, type ImperfectionId } from "./imperfections";
import { shopWords } from "./tables/shop-words";

/** Lower case without accents, hyphens as spaces: what a person types is compared with what is written. */
const plain = (text: string): string =>
  text
    .normalize("NFD")
    .replace(/\p{Diacritic}/gu, "")
    .replace(/[-–']/g, " ")
    .toLowerCase()
    .trim();

/** One word or two: rollover, roll-over and roll over are the same. */
const joined = (text: string): string => plain(text).replace(/\s+/g, "");

const byShopWord: ReadonlyMap<string, readonly ImperfectionId[]> = new Map(
  Object.entries(shopWords).map(([word, ids]) => [joined(word), ids]),
);

const namesOf = ({ name, alsoCalled }: Imperfection): readonly string[] => [name, ...alsoCalled];

/** Called just so by name; a plural counts as the word itself. */
function calledSo(whole: string): readonly ImperfectionId[] {
  const isSo = (name: string): boolean => joined(name) === whole || `${joined(name)}s` === whole;
  return imperfectionIds.filter((id) => namesOf(imperfections[id]).some(isSo));
}

/** By the words of the bench: the word itself, or without a plural's s. */
function calledAtTheBench(whole: string): readonly ImperfectionId[] {
  return byShopWord.get(whole) ?? byShopWord.get(whole.replace(/s$/, "")) ?? [];
}

/** What is looked through, made plain once. */
const searched = imperfectionIds.map((id) => {
  const row = imperfections[id];
  const names = namesOf(row).map(plain).join(" | ");
  const all = `${names} ${plain(row.look)} ${row.iso6520 ?? ""} ${row.iso6520InButt ?? ""}`;
  return { id, names, joinedNames: joined(names), all, joinedAll: joined(all) };
});

/** How well all typed words are found: 1 each begins a word of a name, 2 somewhere in a name, 3 in the look or number; null not. */
function rankOf(row: (typeof searched)[number], words: readonly string[]): 1 | 2 | 3 | null {
  const { names, joinedNames, all, joinedAll } = row;
  if (words.every((word) => ` ${names}`.includes(` ${word}`))) return 1;
  if (words.every((word) => names.includes(word) || joinedNames.includes(word))) return 2;
  return words.every((word) => all.includes(word) || joinedAll.includes(word)) ? 3 : null;
}

/** Kinds a half-typed word of the bench may become, in the order of the table. */
function begunAtTheBench(whole: string): readonly ImperfectionId[] {
  if (whole.length < 3) return [];
  return [...byShopWord].filter(([word]) => word.startsWith(whole)).flatMap(([, ids]) => ids.slice(0, 1));
}

/**
 * What somebody may mean by a word, the likeliest first: what is called just so, what the bench calls so, then names
 * that have the words, then descriptions and ISO 6520 numbers. Nothing typed finds nothing.
 */
export function findImperfections(typed: string): readonly ImperfectionId[] {
  const words = plain(typed).split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  const whole = joined(typed);
  const ranked = searched
    .flatMap((row) => {
      const rank = rankOf(row, words);
      return rank === null ? [] : [{ id: row.id, rank }];
    })
    .toSorted((a, b) => a.rank - b.rank);
  const named = ranked.filter(({ rank }) => rank < 3).map(({ id }) => id);
  const described = ranked.filter(({ rank }) => rank === 3).map(({ id }) => id);
  const called = [...calledSo(whole), ...calledAtTheBench(whole)];
  // A word that means something just so is not drowned in descriptions that happen to have it.
  if (called.length > 0) return [...new Set([...called, ...named])];
  return [...new Set([...named, ...begunAtTheBench(whole), ...described])];
}
