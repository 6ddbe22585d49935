import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { makeThrottle, takeAll } from "@/lib/account";
import { useFreshDb } from "../../setup/fresh-db";
import { inDepth } from "../../setup/in-depth";

const fresh = useFreshDb();
const MINUTE = 60_000;
let kinds = 0;
/** A throttle of its own for each case. */
const throttle = (allowed: number, most?: number) =>
  makeThrottle(`kind ${(kinds += 1)}`, { allowed, windowMs: MINUTE }, most);

describe("a throttle", () => {
  it("lets so many through in its window, says how long to wait, and lets on when the first is old", async () => {
    const { db } = fresh();
    const tries = throttle(2);
    const wait = (who: string, now: number) => tries.waitSeconds(db, who, now);
    expect(await wait("a", 0)).toBe(0);
    await tries.count(db, "a", 0);
    await tries.count(db, "a", 10_000);
    expect(await wait("a", 20_000)).toBe(40);
    expect(await wait("b", 20_000)).toBe(0);
    expect(await wait("a", 59_999)).toBe(1);
    expect(await wait("a", MINUTE)).toBe(0);
    await tries.count(db, "a", MINUTE);
    expect(await wait("a", MINUTE)).toBe(10);
    await tries.forget(db, "a");
    expect(await wait("a", MINUTE)).toBe(0);
  });

  it("never lets more through in any window than is allowed, and always after the wait it names", async () => {
    const { db } = fresh();
    const gaps = fc.array(fc.integer({ min: 0, max: 30_000 }), { minLength: 10, maxLength: 40 });
    await fc.assert(
      fc.asyncProperty(gaps, fc.integer({ min: 1, max: 5 }), async (steps, allowed) => {
        const tries = throttle(allowed);
        const through: number[] = [];
        let now = 0;
        for (const step of steps) {
          now += step;
          const wait = await tries.waitSeconds(db, "a", now);
          expect(await tries.waitSeconds(db, "a", now + wait * 1000)).toBe(0);
          expect(await tries.take(db, "a", now)).toBe(wait);
          if (wait === 0) through.push(now);
        }
        for (const at of through)
          expect(through.filter((other) => other >= at && other < at + MINUTE).length).toBeLessThanOrEqual(
            allowed,
          );
      }),
      { numRuns: inDepth(5, 40), seed: 4 },
    );
  });

  it("lets exactly as many through of those that come at once", async () => {
    const { db } = fresh();
    const tries = throttle(7);
    const waits = await Promise.all(Array.from({ length: 30 }, (_, i) => tries.take(db, "a", 1000 + i)));
    expect(waits.filter((seconds) => seconds === 0)).toHaveLength(7);
  });

  it("counts by all or by none", async () => {
    const { db } = fresh();
    const [tight, wide] = [throttle(1), throttle(5)];
    const both = [[wide, "a"] as const, [tight, "a"] as const];
    expect(await takeAll(db, both, 10)).toBe(0);
    expect(await takeAll(db, both, 20)).toBe(60);
    // What was refused by one was no try of the other.
    for (let i = 0; i < 4; i += 1) expect(await wide.take(db, "a", 30 + i)).toBe(0);
    expect(await wide.take(db, "a", 40)).toBeGreaterThan(0);
  });

  it("gives a try back that was none", async () => {
    const { db } = fresh();
    const tries = throttle(1);
    await tries.count(db, "a", 5);
    await tries.giveBack(db, "a", 5);
    expect(await tries.waitSeconds(db, "a", 6)).toBe(0);
  });
});

describe("what a throttle keeps", () => {
  it("is swept by time, whoever comes next and to which", async () => {
    const { db } = fresh();
    const [tries, other] = [throttle(3), throttle(3)];
    for (let i = 0; i < 20; i += 1) await tries.count(db, `name ${i}`, i);
    expect(await tries.kept(db)).toBe(20);
    await other.count(db, "later", 200_000);
    expect(await tries.kept(db)).toBe(0);
    expect(await other.kept(db)).toBe(1);
  });

  it("is never more than so many, and of those the latest", async () => {
    const { db } = fresh();
    const tries = throttle(3, 10);
    for (let i = 0; i < 40; i += 1) await tries.count(db, `name ${i}`, 300_000 + i);
    expect(await tries.kept(db)).toBe(10);
    for (let i = 0; i < 3; i += 1) await tries.count(db, "name 39", 300_050);
    expect(await tries.waitSeconds(db, "name 39", 300_060)).toBeGreaterThan(0);
  });

  it("grows neither with the tries of one nor with the length of a name, and names nobody", async () => {
    const { db } = fresh();
    const tries = throttle(3);
    const long = "x".repeat(500_000);
    for (let i = 0; i < 50; i += 1) await tries.count(db, `${long}a`, 400_000 + i);
    const rows = await db.tries.findMany({ where: { until: { gt: new Date(400_000) } } });
    for (const row of rows) expect(JSON.stringify(row).length).toBeLessThan(300);
    expect(JSON.stringify(rows)).not.toContain("xxx");
    // Long names that differ only at the end are still two.
    expect(await tries.waitSeconds(db, `${long}a`, 400_060)).toBeGreaterThan(0);
    expect(await tries.waitSeconds(db, `${long}b`, 400_060)).toBe(0);
  });
});
