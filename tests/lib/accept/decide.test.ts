import { describe, expect, it } from "vitest";
import { decide, spreadOf } from "@/lib/accept/decide";
import { quantity } from "./arbitraries";

const limit = (value: number) => ({ low: value, high: value, spread: 0, unknown: [] });
const at = (value: number, spread = 0) => ({ low: value, high: value, spread });

/** Guard band and simple acceptance: JCGM 106:2012, 8.2 and 8.3. */
describe("decide", () => {
  it.each([
    [0.5, 0, "meets"],
    [0.51, 0, "fails"],
    [0.4, 0.1, "meets"],
    [0.4, 0.11, "open"],
    [0.6, 0.11, "open"],
    [0.6, 0.09, "fails"],
  ])("%s with spread %s against at most 0.5: %s", (value, spread, result) => {
    expect(decide(at(value, spread), "<=", limit(0.5)).result).toBe(result);
  });

  it("turns round for at least", () => {
    expect(decide(at(110), ">=", limit(110)).result).toBe("meets");
    expect(decide(at(109), ">=", limit(110)).result).toBe("fails");
    expect(decide(at(112, 3), ">=", limit(110)).result).toBe("open");
  });

  it("does not fail a reading at the limit for the sake of rounding", () => {
    expect(decide(at(0.1 + 0.2), "<=", limit(0.3)).result).toBe("meets");
  });

  it("is open between the bounds of a limit not fully known, closed outside them", () => {
    const range = { low: 1, high: 4, spread: 0, unknown: ["r" as const] };
    expect(decide(at(0.9), "<=", range).result).toBe("meets");
    expect(decide(at(2), "<=", range)).toEqual({ result: "open", straddles: false });
    expect(decide(at(4.1), "<=", range).result).toBe("fails");
  });

  it("takes gauges as read unless told to guard them, and photos never", () => {
    expect(spreadOf(quantity(1, 0.2, "gauge"), "as-read")).toBe(0);
    expect(spreadOf(quantity(1, 0.2, "gauge"), "guarded")).toBe(0.2);
    expect(spreadOf(quantity(1, 0.2, "photo"), "as-read")).toBe(0.2);
    // ISO 14253-1: 1.65 u, and U = 2 u.
    expect(spreadOf(quantity(1, 0.2, "gauge"), "one-sided")).toBeCloseTo(1.65 * 0.1, 12);
  });

  it("never takes a figure that may be anything as met: its slack is not without bound", () => {
    for (const value of [0, 12.5, 1e6])
      expect(decide({ low: 0, high: Infinity, spread: 0 }, "<=", limit(value)).result).toBe("open");
    expect(decide({ low: -Infinity, high: 200, spread: 0 }, ">=", limit(110)).result).toBe("open");
    expect(
      decide({ low: 0, high: 3, spread: 0 }, "<=", { low: 0, high: Infinity, spread: 0, unknown: ["b"] })
        .result,
    ).toBe("open");
  });
});
