import { createHash } from "node:crypto";
import type { Limit } from "./limits";

export interface Throttle {
  /** Seconds this one has to wait before the next try; 0: none. `now`: ms. */
  waitSeconds(who: string, now: number): number;
  /** One more try of this one. */
  count(who: string, now: number): void;
  /** Takes back the try counted at this time: it was none after all. */
  giveBack(who: string, at: number): void;
  /** Its tries no longer count. */
  forget(who: string): void;
  /** Of how many it keeps something. */
  kept(): number;
}

/** A name longer than this is kept by its digest, so that what strangers send does not fill the memory. */
const LONGEST_NAME = 64;

/**
 * At most `allowed` tries in any `windowMs`, for each who. In memory: restarting the server is no way around it for
 * somebody who guesses from outside. Bounded in every way: by the times kept of one, by the length of a name, by `most`
 * names, of which the one that tried longest ago goes first, and by time.
 */
export function makeThrottle({ allowed, windowMs }: Limit, most = 5000): Throttle {
  const tries = new Map<string, readonly number[]>();
  let swept = 0;
  const recent = (key: string, now: number) => (tries.get(key) ?? []).filter((at) => now - at < windowMs);
  const keep = (key: string, times: readonly number[]) => {
    tries.delete(key);
    if (times.length > 0) tries.set(key, times);
  };
  const sweep = (now: number) => {
    if (Math.abs(now - swept) < windowMs) return;
    swept = now;
    for (const key of tries.keys()) if (recent(key, now).length === 0) tries.delete(key);
  };
  return {
    waitSeconds(who, now) {
      const list = recent(keyOf(who), now);
      // Enough of them must have left the window that one more is within what is allowed.
      const blocking = list[list.length - allowed];
      return blocking === undefined ? 0 : Math.ceil((windowMs - (now - blocking)) / 1000);
    },
    count(who, now) {
      sweep(now);
      keep(keyOf(who), [...recent(keyOf(who), now), now].slice(-allowed));
      // A map goes through its keys in the order in which they were set last.
      for (const oldest of tries.keys()) {
        if (tries.size <= most) break;
        tries.delete(oldest);
      }
    },
    giveBack(who, at) {
      const times = [...(tries.get(keyOf(who)) ?? [])];
      const index = times.indexOf(at);
      if (index >= 0) keep(keyOf(who), times.toSpliced(index, 1));
    },
    forget: (who) => void tries.delete(keyOf(who)),
    kept: () => tries.size,
  };
}

const keyOf = (who: string): string =>
  who.length <= LONGEST_NAME ? who : createHash("sha256").update(who).digest("base64url");
