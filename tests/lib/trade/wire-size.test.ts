import { describe, expect, test } from "vitest";
import { trueWireSize } from "@/lib/trade";
import { wireSizePairs } from "@/lib/trade/tables/wire-size-pairs";
import { isInchSize } from "@/lib/trade/wire-size";
import { wireSizes } from "@/lib/units/tables/wire-sizes";

describe("the diameter behind a stored size", () => {
  /** Conversion: .035 in is 0.889 mm, .045 is 1.143, .052 is 1.3208, .068 is 1.7272, 1/16 is 1.5875, 5/64 is 1.984375. */
  test.each([
    [0.8, 0.762],
    [0.9, 0.889],
    [1.2, 1.143],
    [1.4, 1.3208],
    [1.6, 1.5875],
    [1.7, 1.7272],
    [2, 1.984375],
    [2.4, 2.38125],
  ])("inch wire stored as %d mm is %d mm", (stored, mm) => {
    expect(trueWireSize(stored, true)).toMatchObject({ areaRelativeError: 0 });
    expect(trueWireSize(stored, true).diameterMm).toBeCloseTo(mm, 9);
  });

  test("where it may be either, both true areas lie within the stated error, and no wider than need be", () => {
    for (const { nominalMm, inches, soldMetric } of wireSizePairs.filter((pair) => pair.soldMetric)) {
      const { diameterMm, areaRelativeError } = trueWireSize(nominalMm);
      const off = [nominalMm, inches * 25.4].map((mm) => Math.abs(mm ** 2 / diameterMm ** 2 - 1));
      expect(soldMetric).toBe(true);
      for (const one of off) expect(one).toBeCloseTo(areaRelativeError, 9);
    }
    // .045 in against 1.2 mm: a tenth of the area, so five per cent either way.
    expect(trueWireSize(1.2).areaRelativeError).toBeCloseTo(0.0486, 3);
  });

  test("a diameter that is no trade name stands as it is", () => {
    for (const mm of [1.143, 0.87, 0.889, 3.05])
      expect(trueWireSize(mm)).toMatchObject({ diameterMm: mm, areaRelativeError: 0 });
  });

  test("the pairs are those that a typed size is read by", () => {
    for (const { mm, inches } of wireSizes) {
      const own = wireSizePairs.find((pair) => pair.nominalMm === mm);
      if (own) expect(own.inches).toBe(inches);
    }
  });

  test("stored names find their inch rows, and no other size's", () => {
    for (const { nominalMm, inches } of wireSizePairs) {
      expect(isInchSize(inches, nominalMm), `${nominalMm}`).toBe(true);
      expect(isInchSize(inches, inches * 25.4)).toBe(true);
    }
    expect(isInchSize(3 / 32, 2.5)).toBe(true);
    expect(isInchSize(3 / 16, 5)).toBe(true);
    for (const [inches, mm] of [
      [0.035, 0.8],
      [0.035, 1],
      [1 / 16, 1.7],
      [0.068, 1.6],
      [0.052, 1.2],
      [0.045, 1],
    ] as const)
      expect(isInchSize(inches, mm), `${inches} ${mm}`).toBe(false);
  });
});
