import type { TrialRange } from "./trial";

type Ends = Pick<TrialRange, "low" | "high">;

/** Settings as numbers from -1 at the low end of each knob to 1 at the high end. */
export function coded(knobs: readonly Ends[], at: readonly number[]): readonly number[] {
  return knobs.map(({ low, high }, i) => (2 * (at[i]! - low)) / (high - low) - 1);
}

/** The way back. */
export function decoded(knobs: readonly Ends[], x: readonly number[]): readonly number[] {
  return knobs.map(({ low, high }, i) => low + ((x[i]! + 1) / 2) * (high - low));
}
