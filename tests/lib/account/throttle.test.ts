import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeThrottle } from "@/lib/account";

describe("a throttle", () => {
  it("lets so many through in its window, says how long to wait, and lets on when the first is old", () => {
    const tries = makeThrottle({ allowed: 2, windowMs: 60_000 });
    expect(tries.waitSeconds("a", 0)).toBe(0);
    tries.count("a", 0);
    tries.count("a", 10_000);
    expect(tries.waitSeconds("a", 20_000)).toBe(40);
    expect(tries.waitSeconds("b", 20_000)).toBe(0);
    expect(tries.waitSeconds("a", 59_999)).toBe(1);
    expect(tries.waitSeconds("a", 60_000)).toBe(0);
    tries.count("a", 60_000);
    expect(tries.waitSeconds("a", 60_000)).toBe(10);
    tries.forget("a");
    expect(tries.waitSeconds("a", 60_000)).toBe(0);
  });

  it("never lets more through in any window than is allowed, and always after the wait it names", () => {
    const gaps = fc.array(fc.integer({ min: 0, max: 30_000 }), { maxLength: 60 });
    fc.assert(
      fc.property(gaps, fc.integer({ min: 1, max: 5 }), (steps, allowed) => {
        const tries = makeThrottle({ allowed, windowMs: 60_000 });
        const through: number[] = [];
        let now = 0;
        for (const step of steps) {
          now += step;
          const wait = tries.waitSeconds("a", now);
          expect(tries.waitSeconds("a", now + wait * 1000)).toBe(0);
          if (wait > 0) continue;
          tries.count("a", now);
          through.push(now);
        }
        for (const at of through)
          expect(through.filter((other) => other >= at && other < at + 60_000).length).toBeLessThanOrEqual(
            allowed,
          );
      }),
    );
  });
});
