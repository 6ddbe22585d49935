import { foldText } from "@/lib/facts";

/** Who a bead's welder is: one person here, nobody here by that word, or one of several who share it. */
export type Standing = "person" | "nobody" | "several";

export interface KnownPerson {
  readonly id: string;
  readonly mark: string | null;
  readonly name: string | null;
}

export interface JoinedWelder {
  /** Rows with the same one are the same person's. */
  readonly id: string;
  /** Whose it is; null: a word. */
  readonly personId: string | null;
  readonly standing: Standing;
  /** By what the person is known; null: by what stands on the rows. */
  readonly label: string | null;
}

/**
 * Puts what beads say of who ran them to persons: a linked bead is its person's; a typed word that is exactly one person's
 * mark or name, whatever its case, is that person's too. Any other word stays a row of its own, and says why.
 *
 * @returns For a bead's link and word whose it is; null where neither is recorded.
 */
export function welderJoiner(
  people: readonly KnownPerson[],
): (welderId: string | null, word: string | null) => JoinedWelder | null {
  const byId = new Map(people.map((person) => [person.id, person]));
  const byWord = new Map<string, Set<string>>();
  for (const { id, mark, name } of people)
    for (const word of [mark, name])
      if (word !== null && word.trim() !== "")
        byWord.set(foldText(word), (byWord.get(foldText(word)) ?? new Set()).add(id));
  const personal = (id: string): JoinedWelder => {
    const person = byId.get(id);
    return {
      id: `person:${id}`,
      personId: id,
      standing: "person",
      label: person?.mark ?? person?.name ?? null,
    };
  };
  return (welderId, word) => {
    if (welderId !== null) return personal(welderId);
    if (word === null || word.trim() === "") return null;
    const folded = foldText(word);
    const [one, ...others] = byWord.get(folded) ?? [];
    if (one !== undefined && others.length === 0) return personal(one);
    return {
      id: `word:${folded}`,
      personId: null,
      standing: one === undefined ? "nobody" : "several",
      label: null,
    };
  };
}
