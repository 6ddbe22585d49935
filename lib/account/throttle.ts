import type { Limit } from "./limits";

export interface Throttle {
  /** Seconds this one has to wait before the next try; 0: none. `now`: ms. */
  waitSeconds(who: string, now: number): number;
  /** One more try of this one. */
  count(who: string, now: number): void;
  /** Its tries no longer count. */
  forget(who: string): void;
}

/** Beyond so many names the old ones are swept out, so that made-up names cannot fill the memory. */
const MOST_NAMES = 5000;

/**
 * At most `allowed` tries in any `windowMs`, for each who. In memory: restarting the server is no way around it for
 * somebody who guesses from outside.
 */
export function makeThrottle({ allowed, windowMs }: Limit): Throttle {
  const tries = new Map<string, readonly number[]>();
  const recent = (who: string, now: number) => (tries.get(who) ?? []).filter((at) => now - at < windowMs);
  return {
    waitSeconds(who, now) {
      const list = recent(who, now);
      // Enough of them must have left the window that one more is within what is allowed.
      const blocking = list[list.length - allowed];
      return blocking === undefined ? 0 : Math.ceil((windowMs - (now - blocking)) / 1000);
    },
    count(who, now) {
      tries.set(who, [...recent(who, now), now]);
      if (tries.size <= MOST_NAMES) return;
      for (const other of tries.keys()) if (recent(other, now).length === 0) tries.delete(other);
    },
    forget(who) {
      tries.delete(who);
    },
  };
}
