import type { Confidence, Source } from "@/lib/base";
import type { CriteriaBook, CriteriaSet, Criterion, DatedCriterion, Variant } from "./rule";

/** What a bead, exercise or job names one edition by: the book's key, or "KEY@EDITION". It never means another. */
export function editionId({ key, bareKeyMeans }: CriteriaBook, edition: string): string {
  return edition === bareKeyMeans ? key : `${key}@${edition}`;
}

/** A set with one edition as a book to which later ones can be appended. */
export function bookOf({
  id,
  edition,
  criteria,
  notCovered,
  ...rest
}: Omit<CriteriaSet, "family">): CriteriaBook {
  return {
    ...rest,
    key: id,
    bareKeyMeans: edition,
    editions: [{ name: edition, notCovered }],
    criteria: criteria.map((one) => since(edition, one)),
  };
}

/** A clause whose figures begin in `edition`. */
export function since(edition: string, { variants, ...rest }: Criterion): DatedCriterion {
  return { ...rest, editions: [{ from: edition, variants }] };
}

/**
 * The set as it stands in one edition: of every clause the last entry that has begun. Figures that an older edition
 * began are taken over with less confidence, because nobody read them in this one. null: no such edition.
 */
export function setAt(book: CriteriaBook, edition: string): CriteriaSet | null {
  const names = book.editions.map(({ name }) => name);
  const at = names.indexOf(edition);
  const here = book.editions[at];
  if (here === undefined) return null;
  const { key, editions: _, bareKeyMeans: __, ...rest } = book;
  return {
    ...rest,
    id: editionId(book, edition),
    family: key,
    edition,
    scopeSource: carried(book.scopeSource, edition),
    criteria: book.criteria.flatMap((criterion) => criterionAt(criterion, names, at)),
    notCovered: here.notCovered,
  };
}

/** Every edition of a book, in order. */
export function setsOf(book: CriteriaBook): readonly CriteriaSet[] {
  return book.editions.flatMap(({ name }) => setAt(book, name) ?? []);
}

function criterionAt(
  { editions, ...rest }: DatedCriterion,
  names: readonly string[],
  at: number,
): readonly Criterion[] {
  const edition = names[at]!;
  const begun = editions.findLast(({ from }) => names.indexOf(from) <= at);
  if (begun === undefined || begun.variants === null) return [];
  const asHere = (variant: Variant): Variant => ({ ...variant, source: carried(variant.source, edition) });
  return [{ ...rest, variants: begun.variants.map(asHere) }];
}

/** What a figure read in one edition is worth as a figure of the next. */
const later: Partial<Record<Confidence, Confidence>> = { seen: "seen-older", derived: "seen-older" };

function carried(source: Source, edition: string): Source {
  const { edition: from, confidence, note } = source;
  if (from === undefined || from === edition) return source;
  const taken = `figure of the ${from} edition, taken over`;
  return {
    ...source,
    edition,
    confidence: later[confidence] ?? confidence,
    note: note === undefined ? taken : `${note}; ${taken}`,
  };
}
