import type { CriteriaSummary } from "@/lib/accept";

/** What a choice of criteria shows of each set. */
export type CriteriaChoice = Pick<CriteriaSummary, "id" | "title" | "document" | "edition" | "shop">;

/**
 * The options of a choice of criteria. The shop's own stand apart from the codes, so that nobody takes one for the
 * other; the codes stand by document, each set with its edition.
 */
export function CriteriaOptions({ criteria }: { readonly criteria: readonly CriteriaChoice[] }) {
  const own = criteria.filter(({ shop }) => shop !== null);
  const codes = criteria.filter(({ shop }) => shop === null);
  const documents = [...new Set(codes.map(({ document }) => document))];
  return (
    <>
      {own.length > 0 && <optgroup label="The shop's own, not a code">{options(own)}</optgroup>}
      {documents.map((name) => (
        <optgroup key={name} label={name}>
          {options(codes.filter(({ document }) => document === name))}
        </optgroup>
      ))}
    </>
  );
}

function options(sets: readonly CriteriaChoice[]) {
  return sets.map(({ id, title, edition }) => (
    <option key={id} value={id}>
      {title}, {edition}
    </option>
  ));
}
