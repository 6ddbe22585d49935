import { dialStep } from "@/lib/plan";
import type { RunSetup } from "@/lib/setup";
import type { Trial, TrialKnob } from "./trial";

/** A knob that stood elsewhere than the series had it. */
export interface OffPoint {
  readonly field: TrialKnob;
  readonly value: number;
}

/**
 * The knobs a bead was run with otherwise than its point says, by more than a step of the dial: its reading says nothing of
 * that point. What nobody said is not otherwise.
 */
export function offPoint(
  { knobs, dials }: Pick<Trial, "knobs" | "dials">,
  at: readonly number[],
  setup: RunSetup,
): readonly OffPoint[] {
  return knobs.flatMap(({ field }, i) => {
    const value = setup[field];
    if (value === null || Math.abs(value - at[i]!) <= 1.01 * dialStep(dials, field)) return [];
    return [{ field, value }];
  });
}
