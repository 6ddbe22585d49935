import fc from "fast-check";
import { expect, it } from "vitest";
import { restAfter } from "@/lib/beads/work-again";

const took = fc.double({ min: 0, max: 60_000, noNaN: true });

it("beside others at work, what nobody looks at takes a third of the time at most, however slow the machine is", () => {
  fc.assert(
    fc.property(took, fc.constantFrom("soon" as const, "some day" as const), (ms, pace) => {
      const { least, most } = restAfter(pace, ms);
      expect(ms / (ms + most)).toBeLessThanOrEqual(1 / 3 + 1e-9);
      expect(least).toBe(pace === "soon" ? 20 : 400);
      expect(most).toBeGreaterThanOrEqual(least);
    }),
    { seed: 7 },
  );
});

it("what is on a screen waits for nothing but a breath", () => {
  const isBreath = (ms: number): boolean => {
    const { least, most } = restAfter("now", ms);
    return least === 20 && most === 20;
  };
  fc.assert(fc.property(took, isBreath), { seed: 7 });
});
