import { certaintyOf, type Certainty } from "@/lib/diagnose/certainty";
import { certainties } from "@/lib/diagnose/certainty";

/** A first cause: how likely it was said to be, and whether it was right. */
export interface Told {
  readonly probability: number;
  readonly right: boolean;
}

/** Lower ends; each band reaches up to the next, the last one to 1. */
export const bands = [0, 0.2, 0.35, 0.5, 0.7] as const;

export interface Band {
  readonly from: number;
  readonly to: number;
  readonly of: number;
  readonly right: number;
  /** Mean of the stated probabilities, null where there is none. */
  readonly stated: number | null;
}

/** How often the first cause was right, by how likely it was said to be. */
export function reliability(told: readonly Told[], lowerEnds: readonly number[] = bands): readonly Band[] {
  return lowerEnds.map((from, i) => {
    const to = lowerEnds[i + 1] ?? Infinity;
    const inside = told.filter(({ probability }) => probability >= from && probability < to);
    const sum = inside.reduce((total, { probability }) => total + probability, 0);
    return {
      from,
      to: Math.min(1, to),
      of: inside.length,
      right: inside.filter(({ right }) => right).length,
      stated: inside.length === 0 ? null : sum / inside.length,
    };
  });
}

/** The first causes that the product would speak of with this word. */
export const saidTo = (told: readonly Told[], word: Certainty): readonly Told[] =>
  told.filter(({ probability }) => certaintyOf(probability) === word);

/** Words whose first causes were right less often than the word promises. */
export const brokenPromises = (told: readonly Told[]): readonly Certainty[] =>
  certainties
    .filter(({ word, rightAtLeast }) => {
      const mine = saidTo(told, word);
      return mine.filter(({ right }) => right).length < rightAtLeast * mine.length;
    })
    .map(({ word }) => word);
