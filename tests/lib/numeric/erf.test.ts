import { describe, expect, it } from "vitest";
import { erf } from "@/lib/numeric";

/** Abramowitz and Stegun, Handbook of Mathematical Functions, table 7.1. */
describe("erf", () => {
  it.each([
    [0, 0],
    [0.5, 0.5204998778],
    [1, 0.8427007929],
    [1.5, 0.9661051465],
    [2, 0.995322265],
  ])("of %s is %s, and of its opposite the opposite", (x, value) => {
    expect(Math.abs(erf(x) - value)).toBeLessThan(1.5e-7);
    expect(erf(-x)).toBe(-erf(x));
  });
});
