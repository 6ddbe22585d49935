import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeThrottle } from "@/lib/account";
import { heldBytes } from "../../setup/held-bytes";

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

describe("what a throttle keeps", () => {
  const minute = { allowed: 3, windowMs: 60_000 };

  it("is swept by time, whoever comes next", () => {
    const tries = makeThrottle(minute);
    for (let i = 0; i < 1000; i += 1) tries.count(`name ${i}`, i);
    expect(tries.kept()).toBe(1000);
    tries.count("later", 200_000);
    expect(tries.kept()).toBe(1);
  });

  it("is never more than so many, and of those the latest", () => {
    const tries = makeThrottle(minute, 50);
    for (let i = 0; i < 1000; i += 1) tries.count(`name ${i}`, 10);
    expect(tries.kept()).toBe(50);
    for (let i = 0; i < 3; i += 1) tries.count("name 999", 10);
    expect(tries.waitSeconds("name 999", 10)).toBeGreaterThan(0);
  });

  it("grows neither with the tries of one nor with the length of a name", () => {
    const tries = makeThrottle(minute, 5000);
    const before = heldBytes();
    for (let i = 0; i < 100; i += 1) tries.count(`${i}`.padStart(500_000, "ж"), 10);
    for (let i = 0; i < 1_000_000; i += 100) tries.count("one", 10);
    expect(heldBytes() - before).toBeLessThan(10e6);
    // Long names that differ only at the end are still two.
    for (let i = 0; i < 3; i += 1) tries.count(`${"x".repeat(600)}a`, 20);
    expect(tries.waitSeconds(`${"x".repeat(600)}a`, 20)).toBeGreaterThan(0);
    expect(tries.waitSeconds(`${"x".repeat(600)}b`, 20)).toBe(0);
  });

  it("gives a try back that was none", () => {
    const tries = makeThrottle({ allowed: 1, windowMs: 60_000 });
    tries.count("a", 5);
    tries.giveBack("a", 5);
    expect(tries.waitSeconds("a", 6)).toBe(0);
  });
});
