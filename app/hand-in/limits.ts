import { accountSentence, makeThrottle } from "@/lib/account";
import type { Line } from "@/lib/base";

/** A group at the bench hands in within minutes of each other; a hundred photos in ten minutes is no group. */
export const photosByCode = makeThrottle({ allowed: 100, windowMs: 600_000 });
/** And nobody hands in a dozen beads in ten minutes: each has to be run, chipped and brushed. */
export const photosByHand = makeThrottle({ allowed: 12, windowMs: 600_000 });
/** Each reply stands in the log, so one secret address may not fill it. */
export const repliesByHandIn = makeThrottle({ allowed: 6, windowMs: 60_000 });

export function tooMany(code: "too-many-photos" | "too-many-replies", seconds: number): Line {
  return { code, message: accountSentence({ code, path: [], data: { seconds } }) };
}
