import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { betaQuantile } from "@/lib/numeric";
import { betaIncomplete } from "@/lib/numeric/beta-incomplete";
import { logGamma } from "@/lib/numeric/log-gamma";
import reference from "../../reference/beta/data.json";

/** Rounding of a sum of a few hundred terms; the tails also lose what the logarithm of a small number loses. */
const near = (actual: number, expected: number, relative = 1e-10) =>
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(relative * Math.abs(expected) + 1e-14);

describe(`against ${reference.library} (tests/reference/beta/make.py)`, () => {
  it.each(reference.gamma)("logGamma($x)", ({ x, log }) => near(logGamma(x), log, 1e-13));
  it.each(reference.beta)("betaIncomplete($x, $a, $b)", ({ a, b, x, incomplete }) =>
    near(betaIncomplete(x, a, b), incomplete, 1e-9),
  );
  it.each(reference.beta)("betaQuantile($p, $a, $b)", ({ a, b, p, quantile }) =>
    near(betaQuantile(p, a, b), quantile),
  );
});

describe("the beta distribution", () => {
  const shape = fc.double({ min: 0.2, max: 400, noNaN: true });
  const unit = fc.double({ min: 0, max: 1, noNaN: true });

  it("mirrors: I_x(a, b) = 1 - I_(1-x)(b, a) (DLMF 8.17.4)", () => {
    // Steps of 1/1024, so that 1 - x does not round.
    const dyadic = fc.integer({ min: 0, max: 1024 }).map((n) => n / 1024);
    fc.assert(
      fc.property(dyadic, shape, shape, (x, a, b) => {
        expect(betaIncomplete(x, a, b)).toBeCloseTo(1 - betaIncomplete(1 - x, b, a), 11);
      }),
    );
  });

  it("is x to the power a for b = 1", () => {
    fc.assert(
      fc.property(unit, shape, (x, a) => {
        expect(betaIncomplete(x, a, 1)).toBeCloseTo(x ** a, 11);
      }),
    );
  });

  it("has quantiles that lead back", () => {
    const chance = fc.double({ min: 0.001, max: 0.999, noNaN: true });
    const stout = fc.double({ min: 1, max: 400, noNaN: true });
    fc.assert(
      fc.property(chance, stout, stout, (p, a, b) => {
        expect(betaIncomplete(betaQuantile(p, a, b), a, b)).toBeCloseTo(p, 9);
      }),
    );
  });

  it("is NaN outside its domain", () => {
    for (const [x, a, b] of [
      [-0.1, 1, 1],
      [1.1, 1, 1],
      [0.5, 0, 1],
      [0.5, 1, -1],
      [NaN, 1, 1],
    ] as const) {
      expect(betaIncomplete(x, a, b)).toBeNaN();
      expect(betaQuantile(x, a, b)).toBeNaN();
    }
    expect(logGamma(0)).toBeNaN();
    expect(betaQuantile(0, 2, 3)).toBe(0);
    expect(betaQuantile(1, 2, 3)).toBe(1);
  });
});
