import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { logSumExp } from "./log-sum-exp";

describe("logSumExp", () => {
  it("equals the plain sum where that does not overflow, and is safe where it does", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 1 }), (xs) => {
        expect(logSumExp(xs)).toBeCloseTo(Math.log(xs.reduce((sum, x) => sum + Math.exp(x), 0)), 9);
      }),
    );
    expect(logSumExp([1000, 1000 + Math.log(3)])).toBeCloseTo(1000 + Math.log(4), 9);
    expect(logSumExp([])).toBe(-Infinity);
    expect(logSumExp([-Infinity, 2])).toBe(2);
    expect(logSumExp([NaN, 1])).toBeNaN();
  });
});
