import { describe, expect, it } from "vitest";
import { onePassLimits, passesForLeg } from "@/lib/arc";
import { positions, processes } from "@/lib/trade";

describe("how much one pass carries", () => {
  /**
   * From memory: AWS D1.1, prequalified procedures. Published: 9 mm horizontal before the upper toe undercuts (WIS 5), 3/16
   * in for .035 in wire and 1/8 in for .030 (machine manual), 6.4 mm with a 3.2 mm rod (covered-electrode manual).
   */
  it.each([
    ["FCAW-G", 1.2, "horizontal", 9, 9.525],
    ["FCAW-S", 0.9, "horizontal", 4.7625, 9.525],
    ["GMAW", 0.8, "flat", 3.175, 12.7],
    ["SMAW", 3.2, "overhead", 6.4, 7.9375],
    ["SMAW", 4, "horizontal", 7.9375, 7.9375],
  ] as const)("%s %d mm, %s: %d mm; the code %d", (process, diameterMm, position, least, code) => {
    const limits = onePassLimits({ process, diameterMm, position });
    expect(limits[0]!.mm).toBeCloseTo(least, 9);
    expect(limits.find(({ kind }) => kind === "code")?.mm).toBeCloseTo(code, 9);
  });

  it("never empty, least first, and no smaller for knowing less", () => {
    for (const process of [null, ...processes])
      for (const diameterMm of [null, 0.8, 0.9, 1.2, 3.2])
        for (const position of [null, ...positions]) {
          const least = (about: Parameters<typeof onePassLimits>[0]) => onePassLimits(about)[0]!.mm;
          const known = least({ process, diameterMm, position });
          expect(known).toBeGreaterThan(0);
          expect(least({ process, diameterMm: null, position })).toBeGreaterThanOrEqual(known);
          expect(least({ process, diameterMm, position: null })).toBeGreaterThanOrEqual(known);
          expect(least({ process: null, diameterMm, position })).toBeGreaterThanOrEqual(known);
        }
  });

  it("passes by metal: twice the leg is four times the metal", () => {
    expect([5, 8, 8.1, 10, 12, 16].map((leg) => passesForLeg(leg, 8))).toEqual([1, 1, 1, 2, 3, 4]);
    expect(passesForLeg(NaN, 8)).toBe(1);
  });
});
