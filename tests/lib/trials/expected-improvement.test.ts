import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { normalDensity } from "@/lib/numeric";
import { loss } from "@/lib/trials/expected-improvement";
import { expectedImprovement } from "@/lib/trials/expected-improvement";

const aims = [
  { want: "least", target: null },
  { want: "most", target: null },
  { want: "target", target: 6 },
] as const;

describe("the expected improvement", () => {
  it("is sd / √(2π) where the mean is the best so far (Jones, Schonlau and Welch 1998, eq. 15 at equality)", () => {
    expect(expectedImprovement(aims[0], { mean: 5, sd: 0.8 }, 5)).toBeCloseTo(
      0.8 / Math.sqrt(2 * Math.PI),
      12,
    );
    expect(expectedImprovement(aims[1], { mean: 5, sd: 0.8 }, -5)).toBeCloseTo(
      0.8 / Math.sqrt(2 * Math.PI),
      12,
    );
  });

  it("is what a sum over the density gives, for every aim", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...aims),
        fc.double({ min: 2, max: 10, noNaN: true }),
        fc.double({ min: 0.1, max: 2, noNaN: true }),
        fc.double({ min: 0, max: 4, noNaN: true }),
        (aim, mean, sd, so) => {
          const best = aim.want === "most" ? -(4 + so) : aim.want === "least" ? 4 + so : so;
          const n = 20_000;
          let sum = 0;
          for (let i = 0; i < n; i += 1) {
            const z = -8 + (16 * (i + 0.5)) / n;
            sum += Math.max(0, best - loss(aim, mean + sd * z)) * normalDensity(z) * (16 / n);
          }
          expect(Math.abs(expectedImprovement(aim, { mean, sd }, best) - sum)).toBeLessThan(1e-6);
        },
      ),
      { seed: 3, numRuns: 40 },
    );
  });

  it("is what is certain without doubt, and never below nought", () => {
    expect(expectedImprovement(aims[0], { mean: 3, sd: 0 }, 5)).toBe(2);
    expect(expectedImprovement(aims[0], { mean: 6, sd: 0 }, 5)).toBe(0);
    expect(expectedImprovement(aims[2], { mean: 6, sd: 0 }, 0.5)).toBeCloseTo(0.5, 12);
    expect(expectedImprovement(aims[2], { mean: 900, sd: 1e-3 }, 0.5)).toBe(0);
  });
});
