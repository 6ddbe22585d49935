import type { ReadingContext } from "./reading";
import { steps } from "./steps/all";
import { noNumber } from "./steps/step";
import type { Cause } from "./tables/causes";
import { causeLinks } from "./tables/links";
import type { Change } from "./types";
import { strongest } from "./witness";

/** Running, chipping and looking at one more bead, s. Every trial costs this, whatever is changed. Own estimate. */
export const TRIAL_S = 120;

/** The one change that goes with a cause, from this bead's own values. */
export function changeFor(cause: Cause, probability: number, context: ReadingContext): Change {
  const step = steps[cause.id]?.(context) ?? noNumber(cause.sentence, sourceOf(cause));
  const { reason, amounts, source, share, ...numbers } = step;
  return {
    causeId: cause.id,
    sentence: cause.correction,
    direction: cause.direction,
    ...numbers,
    reason: { sentence: reason, amounts, source },
    chanceOfCure: probability * cause.cureRate * share,
    effortS: cause.effortS,
  };
}

function sourceOf(cause: Cause) {
  const link = causeLinks.find((row) => row.cause === cause.id);
  return strongest(...(link?.witnesses ?? []));
}

/**
 * Order in which to try changes: chance of cure per second of trial. With one fault and sure trials this order has the
 * least expected time until the cure (exchange argument on neighbours). Ties by the cause's place in the table.
 */
export function inOrderOfTrial(changes: readonly Change[]): readonly Change[] {
  return changes.toSorted(
    (a, b) => b.chanceOfCure / (TRIAL_S + b.effortS) - a.chanceOfCure / (TRIAL_S + a.effortS),
  );
}
