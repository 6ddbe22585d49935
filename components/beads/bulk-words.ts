import type { Chosen } from "./chosen";

/** What an act on several beads did: each of them is in one of the two lists, under the id it was asked for by. */
export interface BulkDone {
  /** `deletedId`: under what it can be brought back, where it was deleted. */
  readonly done: readonly { readonly id: string; readonly deletedId?: string }[];
  /** With the reason as a sentence. */
  readonly refused: readonly { readonly id: string; readonly why: string }[];
}

export type BulkDid = "deleted" | "brought back" | "filed";

/** What was done, then what was not and why: "3 beads deleted. Not deleted: bead 7. A signed record speaks of it …" */
export function bulkWords(did: BulkDid, { done, refused }: BulkDone, asked: Chosen): string {
  const namesOf = (some: readonly { readonly id: string }[]): readonly string[] =>
    some.map(({ id }) => String(asked.find((one) => one.id === id)?.number ?? "that is gone"));
  const refusals = [...new Set(refused.map(({ why }) => why))].map((reason) => {
    const names = namesOf(refused.filter(({ why }) => why === reason));
    return names.length === 1
      ? `Not ${did}: ${beads(names)}. ${reason}`
      : `Not ${did}: ${beads(names)}. Of each: ${reason}`;
  });
  const names = namesOf(done);
  const said = beads(names);
  const first =
    names.length === 0 ? `Nothing was ${did}.` : `${said[0]?.toUpperCase()}${said.slice(1)} ${did}.`;
  return [first, ...refusals].join(" ");
}

/** More than five are counted: a row of numbers is read by nobody. */
function beads(names: readonly string[]): string {
  if (names.length === 1) return `bead ${names[0]}`;
  return names.length > 5
    ? `${names.length} beads`
    : `beads ${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}
