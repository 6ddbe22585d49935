import type { SetupCode } from "@/lib/setup";
import { holds } from "./evidence";
import { corrections } from "./tables/corrections";
import type { ReadingContext } from "./reading";
import { steps } from "./steps/all";
import { noNumber } from "./steps/step";
import type { Cause } from "./tables/causes";
import { causeLinks } from "./tables/links";
import type { Change } from "./types";
import { strongest } from "./witness";

/**
 * One more trial, s: plate cut and tacked, the bead run, left to cool, chipped and looked at. Every trial costs this,
 * whatever is changed. Own estimate.
 */
export const TRIAL_S = 900;

/** The one change that goes with a cause, from this bead's own values. */
export function changeFor(cause: Cause, probability: number, context: ReadingContext): Change {
  const step = steps[cause.id]?.(context) ?? noNumber(cause.sentence, sourceOf(cause));
  const { reason, amounts, source, share, ...numbers } = step;
  return {
    causeId: cause.id,
    sentence: correctionFor(cause, context),
    direction: cause.direction,
    ...numbers,
    reason: { sentence: reason, amounts, source },
    chanceOfCure: probability * cause.cureRate * share,
    effortS: cause.effortS,
  };
}

/** The cause's own correction, or the one that these circumstances ask for. */
function correctionFor(cause: Cause, { setup, electrode, facts }: ReadingContext): string {
  const fault = (code: SetupCode) => facts.some((one) => one.code === code && one.severity !== null);
  const fitting = corrections.find(
    (row) =>
      row.cause === cause.id &&
      (row.fault === undefined || fault(row.fault)) &&
      holds(row.when, setup, electrode, []),
  );
  return fitting?.sentence ?? cause.correction;
}

function sourceOf(cause: Cause) {
  const link = causeLinks.find((row) => row.cause === cause.id);
  return strongest(...(link?.witnesses ?? []));
}

/**
 * Order in which to try corrections: chance of cure per second of trial. With one fault and sure trials this order has
 * the least expected time until the cure (exchange argument on neighbours). Ties by the cause's place in the table.
 */
export function inOrderOfTrial<C extends { readonly change: Change }>(causes: readonly C[]): readonly C[] {
  const rate = ({ change }: C) => change.chanceOfCure / (TRIAL_S + change.effortS);
  return causes.toSorted((a, b) => rate(b) - rate(a));
}
