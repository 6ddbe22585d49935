/** The first try after one that got no answer, ms; each further one waits twice as long. */
const FIRST_MS = 2_000;
const LONGEST_MS = 30_000;
/** Part of the wait that chance takes off, so that a room full of phones does not come back in one second. */
const SPREAD = 0.25;

/**
 * How long to wait before what got no answer is sent again, ms: about 2 s at first, never more than 30 s.
 *
 * @param failures How many tries in a row got none, this one left out: 0 after the first.
 * @param chance Between 0 and 1, anew each time.
 */
export function retryAfterMs(failures: number, chance: number): number {
  // 2 to the power of five is past the longest wait already; more would only overflow some day.
  const wait = Math.min(LONGEST_MS, FIRST_MS * 2 ** Math.min(failures, 5));
  return Math.round(wait * (1 - SPREAD * chance));
}
