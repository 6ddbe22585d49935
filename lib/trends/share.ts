import { invariant } from "@/lib/base";
import { clopperPearson } from "./clopper-pearson";
import { wilson } from "./wilson";

export const shareMethods = ["wilson", "clopper-pearson"] as const;
export type ShareMethod = (typeof shareMethods)[number];

/** Two-sided confidence 0.95 with the z every table of these intervals is computed with. */
export const CONFIDENCE = 0.95;

declare const made: unique symbol;

/**
 * A share of something counted, never without its interval: the only form in which a share leaves this room. The mark
 * makes the compiler refuse one put together by hand; `shareOf` is the one way to get it.
 */
export interface Share {
  readonly count: number;
  readonly of: number;
  /** count / of, 0 to 1; null when nothing was counted. */
  readonly value: number | null;
  /** Ends of the two-sided 95 % interval, 0 to 1. Nothing counted: 0 and 1, which is all that is known. */
  readonly low: number;
  readonly high: number;
  readonly method: ShareMethod;
  readonly [made]: true;
}

/**
 * `count` out of `of`, both whole, 0 <= count <= of; anything else is our own mistake and thrown.
 * Wilson's interval is close to 95 % on average; Clopper and Pearson's is never below it, and wider.
 */
export function shareOf(count: number, of: number, method: ShareMethod = "wilson"): Share {
  invariant(Number.isSafeInteger(count) && Number.isSafeInteger(of), `share ${count} of ${of}`);
  invariant(count >= 0 && count <= of, `share ${count} of ${of}`);
  const [low, high] =
    of === 0 ? [0, 1] : method === "wilson" ? wilson(count, of) : clopperPearson(count, of, CONFIDENCE);
  const plain: Omit<Share, typeof made> = {
    count,
    of,
    value: of === 0 ? null : count / of,
    low,
    high,
    method,
  };
  return plain as Share;
}
