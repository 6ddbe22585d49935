import { clamp } from "@/lib/numeric";
import type { PlanAsk } from "./ask";
import { dialSteps } from "./tables/figures";

export type Dialled = keyof (typeof dialSteps)["metric"];

/** Binary dust, so that 7.1 stays 7.1 and an end that is a whole step counts as one. */
const DUST = 1e-9;

/**
 * A value as it can be set, inside [low, high]: the nearest step, or one further in; where no step lies inside, the nearer
 * end as it is. Rising in the value, whatever the ends.
 */
export function dialled(
  { dials }: Pick<PlanAsk, "dials">,
  field: Dialled,
  value: number,
  low = -Infinity,
  high = Infinity,
): number {
  const step = dialSteps[dials][field];
  const first = Math.ceil(low / step - DUST);
  const last = Math.floor(high / step + DUST);
  if (first > last) return clamp(value, low, high);
  const steps = Math.max(first, Math.min(last, Math.round(value / step)));
  // Tenths by division: 71 / 10 is 7.1, 71 * 0.1 is not.
  const perUnit = Math.round(1 / step);
  const set = Math.abs(perUnit * step - 1) < DUST ? steps / perUnit : steps * step;
  return clamp(set, low, high);
}
