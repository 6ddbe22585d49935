import fc from "fast-check";
import { expect, it } from "vitest";
import { restAfter } from "@/lib/beads/work-again";

const took = fc.double({ min: 0, max: 60_000, noNaN: true });

it("what nobody looks at takes a third of the time at most, however slow the machine is", () => {
  fc.assert(
    fc.property(took, fc.constantFrom("soon" as const, "some day" as const), (ms, pace) => {
      const rest = restAfter(pace, ms);
      expect(ms / (ms + rest)).toBeLessThanOrEqual(1 / 3 + 1e-9);
      expect(rest).toBeGreaterThanOrEqual(pace === "soon" ? 20 : 400);
    }),
    { seed: 7 },
  );
});

it("what is on a screen waits for nothing but a breath", () => {
  fc.assert(
    fc.property(took, (ms) => restAfter("now", ms) === 20),
    { seed: 7 },
  );
});
