import { dialStep, insideOf, onDial } from "@/lib/plan";
import { setupAt } from "./make-trial";
import type { Trial } from "./trial";

/** At most so many settings of one knob are looked at. */
const MOST = { 1: 81, 2: 21 } as const;

/** Every setting that may be proposed: whole steps of the dials within the ranges, inside the wire's rows. */
export function candidates(trial: Pick<Trial, "base" | "knobs" | "dials">): readonly (readonly number[])[] {
  const { base, knobs, dials } = trial;
  const inside = insideOf(base);
  if (inside === null) return [];
  const most = MOST[knobs.length as 1 | 2];
  const values = knobs.map(({ field, low, high }) => {
    const steps = Math.min(most - 1, Math.max(1, Math.round((high - low) / dialStep(dials, field))));
    const all = Array.from({ length: steps + 1 }, (_, i) =>
      onDial(dials, field, low + (i / steps) * (high - low)),
    );
    return [...new Set(all)].filter((value) => value >= low - 1e-9 && value <= high + 1e-9);
  });
  return values
    .reduce<readonly (readonly number[])[]>(
      (made, of) => made.flatMap((at) => of.map((value) => [...at, value])),
      [[]],
    )
    .filter((at) => inside(setupAt(trial, at)));
}
