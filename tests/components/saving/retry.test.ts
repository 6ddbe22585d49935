import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { retryAfterMs } from "@/components/saving/retry";

const chance = fc.double({ min: 0, max: 1, noNaN: true });

describe("waiting before what got no answer is sent again", () => {
  it("is about two seconds at first, longer each time, and never more than thirty", () => {
    fc.assert(
      fc.property(fc.nat({ max: 10_000 }), chance, (failures, luck) => {
        const wait = retryAfterMs(failures, luck);
        expect(wait).toBeGreaterThanOrEqual(1_500);
        expect(wait).toBeLessThanOrEqual(30_000);
        expect(retryAfterMs(0, luck)).toBeLessThanOrEqual(2_000);
        expect(retryAfterMs(failures + 1, luck)).toBeGreaterThanOrEqual(wait);
      }),
      { seed: 20261126 },
    );
    expect([0, 1, 2, 3, 4, 50].map((failures) => retryAfterMs(failures, 0))).toEqual([
      2_000, 4_000, 8_000, 16_000, 30_000, 30_000,
    ]);
  });

  it("differs from device to device", () => {
    expect(retryAfterMs(3, 1)).toBe(12_000);
    expect(retryAfterMs(3, 0.5)).toBe(14_000);
  });
});
