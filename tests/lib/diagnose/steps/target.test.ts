import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { stepShare, targetIn } from "@/lib/diagnose/steps/target";

const source = { document: "invented", confidence: "own-estimate" } as const;
const band = { low: 10, high: 20, source };

describe("targetIn", () => {
  it("takes one step inside the window, and goes to its nearer quarter from outside", () => {
    expect(targetIn(15, band, -2)).toBe(13);
    expect(targetIn(30, band, -2)).toBe(17.5);
    expect(targetIn(2, band, 2)).toBe(12.5);
  });

  it("an unknown reading goes to the middle; with neither reading nor window there is nothing to say", () => {
    expect(targetIn(null, band, 1)).toBe(15);
    expect(targetIn(null, null, 1)).toBeNull();
    expect(targetIn(4, null, 1)).toBe(5);
  });

  it("never leaves the window, and never goes the wrong way", () => {
    const number = fc.double({ min: 0, max: 60, noNaN: true });
    fc.assert(
      fc.property(number, number, fc.boolean(), (from, size, up) => {
        const to = targetIn(from, band, up ? size : -size)!;
        expect((to - from) * (up ? 1 : -1)).toBeGreaterThanOrEqual(0);
        expect(to).toBeGreaterThanOrEqual(Math.min(band.low, from));
        expect(to).toBeLessThanOrEqual(Math.max(band.high, from));
      }),
    );
  });
});

describe("stepShare", () => {
  it("is the part of a step that the window leaves, and nothing where nobody would see it", () => {
    expect(stepShare(15, 13, -2)).toBe(1);
    expect(stepShare(11, 10, -2)).toBe(0.5);
    expect(stepShare(10.3, 10, -2)).toBe(0);
    expect(stepShare(30, 17.5, -2)).toBe(1);
    expect(stepShare(null, 15, -2)).toBe(1);
  });
});
