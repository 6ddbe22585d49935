import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { AT_ONCE, stepShare, targetFor } from "@/lib/diagnose/steps/target";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const bounds = fc
  .tuple(number(1, 400), number(1, 400))
  .map(([a, b]) => ({ low: Math.min(a, b), high: Math.max(a, b) + 1 }));
const EPS = 1e-9;

describe("targetFor", () => {
  it("goes the way of the aim or nowhere, never past it unless it comes back inside", () => {
    fc.assert(
      fc.property(number(1, 500), number(1, 500), fc.option(bounds), (from, aim, band) => {
        const { to, backIn } = targetFor(from, aim, band);
        expect((to - from) * (aim - from)).toBeGreaterThanOrEqual(-EPS);
        if (!backIn) expect(Math.abs(to - from)).toBeLessThanOrEqual(Math.abs(aim - from) + EPS);
      }),
    );
  });

  it("is never further than one turns at once, unless it comes back inside the bounds", () => {
    fc.assert(
      fc.property(number(1, 500), number(1, 500), fc.option(bounds), (from, aim, band) => {
        const { to, backIn } = targetFor(from, aim, band);
        if (!backIn) expect(Math.abs(to - from)).toBeLessThanOrEqual(AT_ONCE * from + EPS);
        else expect(band !== null && to >= band.low - EPS && to <= band.high + EPS).toBe(true);
      }),
    );
  });

  it("never leaves the bounds from inside them", () => {
    fc.assert(
      fc.property(bounds, number(0, 1), number(1, 500), (band, share, aim) => {
        const from = band.low + share * (band.high - band.low);
        const { to } = targetFor(from, aim, band);
        expect(to).toBeGreaterThanOrEqual(band.low - EPS);
        expect(to).toBeLessThanOrEqual(band.high + EPS);
      }),
    );
  });

  it("says that it is part of the way exactly when the aim lies further", () => {
    expect(targetFor(100, 110, null)).toEqual({ to: 110, partly: false, backIn: false });
    expect(targetFor(100, 200, null)).toEqual({ to: 120, partly: true, backIn: false });
    expect(targetFor(75, 82.5, { low: 90, high: 160 })).toEqual({ to: 107.5, partly: false, backIn: true });
  });
});

describe("stepShare", () => {
  it("counts a part of a step as that part, and less than a quarter as none", () => {
    expect(stepShare(100, 110, 10)).toBe(1);
    expect(stepShare(100, 105, 10)).toBe(0.5);
    expect(stepShare(100, 102, 10)).toBe(0);
    expect(stepShare(null, 102, 10)).toBe(1);
  });
});
