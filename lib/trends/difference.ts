import { formatQuantity } from "@/lib/units";
import type { Share } from "./share";

export interface Difference {
  /** later - earlier, -1 to 1. */
  readonly value: number;
  /** Ends of the two-sided 95 % interval. */
  readonly low: number;
  readonly high: number;
}

/**
 * How far two shares of different beads lie apart, with its interval out of Wilson's of each: method 10 of Newcombe 1998
 * (Statistics in Medicine 17, 873-890). null where one of them was counted on nothing.
 */
export function differenceOf(later: Share, earlier: Share): Difference | null {
  if (later.value === null || earlier.value === null) return null;
  const value = later.value - earlier.value;
  return {
    value,
    low: value - Math.hypot(later.value - later.low, earlier.high - earlier.value),
    high: value + Math.hypot(later.high - later.value, earlier.value - earlier.low),
  };
}

/**
 * What changed from the last period but one to the last, in a sentence; null where the interval of the difference holds
 * nought, so that chance may be all there is.
 *
 * @param points Periods, oldest first.
 */
export function changeSentence(
  points: readonly { readonly label: string; readonly share: Share }[],
): string | null {
  const [earlier, later] = points.slice(-2);
  if (!earlier || !later) return null;
  const found = differenceOf(later.share, earlier.share);
  if (found === null || (found.low <= 0 && found.high >= 0)) return null;
  const [low, high] = [Math.abs(found.low), Math.abs(found.high)].sort((a, b) => a - b) as [number, number];
  const points100 = (share: number): string => formatQuantity("wholePoints", share, "metric");
  const counts = ({ count, of }: Share): string => `${count} of ${of}`;
  return `${found.value > 0 ? "More" : "Fewer"} rejects in ${later.label} (${counts(later.share)}) than in ${earlier.label} (${counts(earlier.share)}): by ${points100(low)} to ${points100(high)} points in a hundred, 95 % interval.`;
}
