import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isDue, isOverdue, newestCopy, nightlyName, staleCopies } from "@/lib/backup/nightly";

const HOUR = 3_600_000;
const times = fc
  .date({ min: new Date("2026-01-01T00:00:00Z"), max: new Date("2027-01-01T00:00:00Z"), noInvalidDate: true })
  .map((at) => new Date(Math.floor(at.getTime() / 1000) * 1000));

describe("a nightly backup", () => {
  it("is made once in any 24 hours at its hour, however often one looks and whatever the machine slept through", () => {
    fc.assert(
      fc.property(
        times,
        fc.integer({ min: 0, max: 23 }),
        fc.array(fc.integer({ min: 1, max: 9 * HOUR }), { minLength: 60, maxLength: 60 }),
        (start, hour, steps) => {
          let [now, last] = [start.getTime(), start];
          const made: Date[] = [];
          for (const step of steps) {
            const before = new Date(now);
            now += step;
            const passed = new Date(now);
            passed.setHours(hour, 0, 0, 0);
            const struck = [0, -24 * HOUR].some(
              (by) => passed.getTime() + by > before.getTime() && passed.getTime() + by <= now,
            );
            const due = isDue(new Date(now), hour, last);
            expect(due).toBe(struck);
            if (due) made.push((last = new Date(now)));
          }
          const days = (now - start.getTime()) / (24 * HOUR);
          expect(made.length).toBeGreaterThanOrEqual(Math.floor(days) - 1);
          expect(made.length).toBeLessThanOrEqual(Math.ceil(days) + 1);
        },
      ),
      { numRuns: 60, seed: 20261126 },
    );
  });

  it("is made when the clock was put back behind the last one", () => {
    expect(isDue(new Date("2026-03-01T12:00:00Z"), 1, new Date("2031-01-01T00:00:00Z"))).toBe(true);
  });

  it("keeps the newest copies and touches nothing else", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(times, { selector: Number }),
        fc.integer({ min: 1, max: 9 }),
        (all, keep) => {
          const names = [...all.map(nightlyName), "holiday photos", "backup-by-hand", "toeline.db"];
          const gone = new Set(staleCopies(names, keep));
          const stays = names.filter((name) => !gone.has(name));
          const newest = [...all].sort((a, b) => b.getTime() - a.getTime()).slice(0, keep);
          expect(stays.sort()).toEqual(
            [...newest.map(nightlyName), "holiday photos", "backup-by-hand", "toeline.db"].sort(),
          );
          expect(newestCopy(names)).toBe(newest[0] ? nightlyName(newest[0]) : null);
        },
      ),
      { numRuns: 100, seed: 20261126 },
    );
  });

  it("is missed aloud after two nights, counted from when it was switched on", () => {
    const since = new Date("2026-11-20T12:00:00Z");
    const after = (hours: number) => new Date(since.getTime() + hours * HOUR);
    expect(isOverdue(after(49), null, since)).toBe(false);
    expect(isOverdue(after(51), null, since)).toBe(true);
    expect(isOverdue(after(51), after(20), since)).toBe(false);
    expect(isOverdue(after(71), after(20), since)).toBe(true);
    expect(isOverdue(after(20), new Date("2026-01-01T00:00:00Z"), since)).toBe(false);
  });
});
