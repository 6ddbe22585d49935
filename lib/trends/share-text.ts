import type { Share } from "./share";

/** From this many on a percentage may stand beside the count; below it, count and interval say all there is. Own rule. */
const ENOUGH_FOR_PERCENT = 20;

/** 0.125 -> "13 %". An end of an interval is rounded to whole percent; more digits would be a false promise. */
export const percent = (value: number): string => `${Math.round(value * 100)} %`;

/**
 * "2 of 5 (95 % interval 12 % to 77 %)"; from twenty on with the percentage in front of the interval. Nothing counted:
 * "none looked at".
 */
export function shareText({ count, of, value, low, high }: Share): string {
  if (value === null) return "none looked at";
  const interval = `95 % interval ${percent(low)} to ${percent(high)}`;
  return of < ENOUGH_FOR_PERCENT
    ? `${count} of ${of} (${interval})`
    : `${count} of ${of}, ${percent(value)} (${interval})`;
}
