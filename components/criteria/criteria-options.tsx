import type { CriteriaSummary } from "@/lib/accept";

/** What a choice of criteria shows of each set. */
export type CriteriaChoice = Pick<CriteriaSummary, "id" | "title" | "edition" | "shop">;

/** The options of a choice of criteria: the shop's own apart from the codes, so that nobody takes one for the other. */
export function CriteriaOptions({ criteria }: { readonly criteria: readonly CriteriaChoice[] }) {
  const own = criteria.filter(({ shop }) => shop !== null);
  const codes = criteria.filter(({ shop }) => shop === null);
  const options = (sets: readonly CriteriaChoice[]) =>
    sets.map(({ id, title, edition }) => (
      <option key={id} value={id}>
        {title}, {edition}
      </option>
    ));
  if (own.length === 0) return options(codes);
  return (
    <>
      <optgroup label="The shop's own, not a code">{options(own)}</optgroup>
      <optgroup label="Standards and codes">{options(codes)}</optgroup>
    </>
  );
}
