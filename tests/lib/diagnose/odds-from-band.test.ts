import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { oddsFromBand } from "@/lib/diagnose/odds-from-band";

const seen = { low: 10, high: 20, source: { document: "invented", confidence: "seen" } } as const;

describe("oddsFromBand", () => {
  it("speaks against both inside, says nothing at the edge, speaks strongly far outside", () => {
    expect(oddsFromBand(15, seen)).toEqual({ high: 0.25, low: 0.25 });
    expect(oddsFromBand(20, seen).high).toBe(1);
    expect(oddsFromBand(40, seen).high).toBe(128);
    expect(oddsFromBand(40, seen).low).toBeLessThan(1);
  });

  it("rises with the reading, and mirrors at the middle", () => {
    const reading = fc.double({ min: 1, max: 60, noNaN: true });
    fc.assert(
      fc.property(reading, reading, (a, b) => {
        const [small, large] = a < b ? [a, b] : [b, a];
        expect(oddsFromBand(large, seen).high).toBeGreaterThanOrEqual(oddsFromBand(small, seen).high);
        expect(Math.abs(oddsFromBand(30 - a, seen).low - oddsFromBand(a, seen).high)).toBeLessThan(1e-9);
      }),
    );
  });

  it("a window from memory speaks more softly than one that was read", () => {
    const recalled = { ...seen, source: { document: "invented", confidence: "memory" } } as const;
    expect(oddsFromBand(40, recalled).high).toBeLessThan(oddsFromBand(40, seen).high);
    expect(oddsFromBand(40, recalled).high).toBeGreaterThan(1);
  });
});
