import { needsCheck, type Source } from "@/lib/base";
import { interpolate, type Knot } from "@/lib/numeric";

/** A starting window of one quantity. */
export interface BandLike {
  readonly low: number;
  readonly high: number;
  readonly source: Source;
}

/**
 * Log2 of the factor on the odds of "too high", over the distance above the upper edge in half-widths of the band.
 * Far inside it speaks against (a quarter), at the edge it says nothing, two half-widths outside it speaks strongly (32 times), four outside it leaves little doubt (128 times).
 * Own estimate: the shape is what matters, and that it is the same for every quantity.
 */
const curve: readonly Knot[] = [
  [-1, -2],
  [-0.3, -1],
  [0, 0],
  [0.5, 2.5],
  [1, 4],
  [2, 5],
  [4, 7],
];

/** Narrow bands (a single printed value) are given this share of the value as half-width: nobody holds it closer. */
const LEAST_HALF_WIDTH = 0.12;

/** What a window from memory or practice, and one of our own estimate, weigh beside one that was read. */
const SOFT = { unread: 0.7, ownEstimate: 0.5 };

/** For the seal over the tables. */
export const bandOdds = { curve, LEAST_HALF_WIDTH, SOFT } as const;

/** A window from memory, practice or estimate speaks more softly than one that was read. */
function trust(source: Source): number {
  if (!needsCheck(source) || source.confidence === "seen-older" || source.confidence === "seen-part")
    return 1;
  return source.confidence === "own-estimate" ? SOFT.ownEstimate : SOFT.unread;
}

/** Factors on the odds of "too high" and "too low" for a value against its band; `weight` softens both. */
export function oddsFromBand(
  value: number,
  band: BandLike,
  weight = 1,
  least = LEAST_HALF_WIDTH,
): { high: number; low: number } {
  const half = Math.max((band.high - band.low) / 2, least * band.high);
  const soft = weight * trust(band.source);
  return {
    high: 2 ** (soft * interpolate(curve, (value - band.high) / half)),
    low: 2 ** (soft * interpolate(curve, (band.low - value) / half)),
  };
}
