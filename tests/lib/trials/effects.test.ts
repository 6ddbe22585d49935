import { describe, expect, it } from "vitest";
import { effects } from "@/lib/trials";
import { twoLevel } from "@/lib/trials/designs";

/**
 * NIST/SEMATECH e-Handbook 5.6.1, eddy current probe sensitivity: a full two-level design in three factors (turns, winding
 * distance, wire gauge) in standard order. Data and effects, twice the printed estimates, read in a text copy of the handbook.
 */
const sensitivity = [1.7, 4.57, 0.55, 3.39, 1.51, 4.59, 0.67, 4.29];
const printed = {
  "0": 3.1025,
  "1": -0.8675,
  "0,1": 0.1275,
  "2": 0.2125,
  "0,2": 0.2475,
  "1,2": 0.2975,
  "0,1,2": 0.1425,
};

describe("effects of a two-level design", () => {
  it("are the handbook's to its digits", () => {
    const found = effects(twoLevel(3), sensitivity)!;
    expect(found.mean).toBeCloseTo(2.65875, 10);
    expect(
      Object.fromEntries(found.effects.map(({ of, value }) => [of.join(), Number(value.toFixed(10))])),
    ).toEqual(printed);
  });

  it("have no interval where nothing was repeated and nothing is left over", () => {
    const found = effects(twoLevel(3), sensitivity)!;
    expect(found.effects.every(({ low, high }) => low === null && high === null)).toBe(true);
  });

  it("have the interval of a difference of two means where one knob was repeated (closed form)", () => {
    const [low, high] = [
      [3.1, 3.5, 3.3],
      [4.6, 4.2, 4.1],
    ] as const;
    const found = effects([...low.map(() => [-1]), ...high.map(() => [1])], [...low, ...high])!.effects[0]!;
    const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / 3;
    const sum = (list: readonly number[]) => list.reduce((s, v) => s + (v - mean(list)) ** 2, 0);
    const s = Math.sqrt((sum(low) + sum(high)) / 4);
    expect(found.value).toBeCloseTo(mean(high) - mean(low), 12);
    // t of 4 degrees at 97.5 %: 2.776 (NIST/SEMATECH e-Handbook 1.3.6.7.2).
    expect(found.high! - found.value).toBeCloseTo(2.776 * s * Math.sqrt(2 / 3), 3);
  });

  it("are not given where the runs do not tell them apart", () => {
    expect(effects(twoLevel(3, [{ factor: 2, of: [0, 1] }]), [1, 2, 3, 4])).toBeNull();
  });
});
