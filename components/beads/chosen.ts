/** A bead that was chosen in the list: enough to name it on every page of the list. */
export interface ChosenBead {
  readonly id: string;
  readonly number: number;
}
export type Chosen = readonly ChosenBead[];

/** As many fit into one address and one act. */
export const MOST_CHOSEN = 200;

export const isChosen = (chosen: Chosen, id: string): boolean => chosen.some((one) => one.id === id);

/** Chooses these as well, in the order of choosing, no bead twice; what would be too many is left out. */
export function alsoChoose(chosen: Chosen, beads: Chosen): Chosen {
  const all = new Map(chosen.map((one) => [one.id, one]));
  for (const one of beads) if (!all.has(one.id)) all.set(one.id, one);
  return [...all.values()].slice(0, MOST_CHOSEN);
}

export const choosingOff = (chosen: Chosen, beads: readonly { readonly id: string }[]): Chosen =>
  chosen.filter(({ id }) => !beads.some((one) => one.id === id));

/** What a browser kept, read back; what is no choice is none. */
export function readChosen(text: string | null): Chosen {
  try {
    const parsed: unknown = JSON.parse(text ?? "[]");
    if (!Array.isArray(parsed)) return [];
    return parsed.filter(isChosenBead).slice(0, MOST_CHOSEN);
  } catch {
    return [];
  }
}

function isChosenBead(value: unknown): value is ChosenBead {
  const { id, number } = (value ?? {}) as Readonly<Record<string, unknown>>;
  return typeof id === "string" && typeof number === "number";
}
