import fc from "fast-check";
import { expect, it } from "vitest";
import { ladderThrough } from "@/lib/sight/ladder";

it("finds the lines of an even rule seen at a slant, and one line that is off does not move it", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 40, noNaN: true }),
      fc.double({ min: -0.002, max: 0.002, noNaN: true }),
      fc.integer({ min: 5, max: 55 }),
      (pitch, slant, wrong) => {
        // A plane seen in perspective maps a line as (a k + b) / (c k + 1).
        const place = (k: number): number => (pitch * k + 100) / (slant * k + 1);
        const ticks = Array.from({ length: 60 }, (_, k) => ({ k, at: place(k) + (k === wrong ? 3 : 0) }));
        const ladder = ladderThrough(ticks)!;
        expect(Math.abs(ladder.at(0) - place(0))).toBeLessThan(0.1);
        expect(Math.abs(ladder.at(59) - place(59))).toBeLessThan(0.1);
      },
    ),
    { seed: 3, numRuns: 60 },
  );
  expect(ladderThrough(Array.from({ length: 7 }, (_, k) => ({ k, at: 9 * k })))).toBeNull();
});
