import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseLength } from "@/lib/units";
import { gaugeMm, type ParseLengthOptions } from "@/lib/units/parse-length";
import { stainlessGauges, steelGauges } from "@/lib/units/tables/gauges";
import { processorMs } from "../../setup/processor-time";

const mm = (text: string, options: Partial<ParseLengthOptions> = {}) => {
  const read = parseLength(text, { default: "mm", ...options });
  return read.ok ? read.value : read.issues[0]?.code;
};
const inches = (text: string) => mm(text, { default: "in" });

describe("what a welder types is read in millimetres", () => {
  test.each([
    ["3.2", 3.2],
    ["3,2", 3.2],
    [" 3.2 mm ", 3.2],
    ["0,9 mm", 0.9],
    [",9", 0.9],
    ["3.", 3],
    ["0,125", 0.125],
    ["12.345", 12.345],
    ["2 cm", 20],
    ["2 CM", 20],
    ["1.5 m", 1500],
    ["1/8", 3.175],
    ["1/8 in", 3.175],
    ['1/8"', 3.175],
    ["3/16″", 4.7625],
    ["1 1/8", 28.575],
    ["1-1/8", 28.575],
    ["1 - 1/8 in.", 28.575],
    ["1½", 38.1],
    ["1 ¼ in", 31.75],
    ["2 in", 50.8],
    ["2 inches", 50.8],
    [".035 in", 0.889],
    ["35 thou", 0.889],
    ["1 ft 2 in", 355.6],
    ["1' 2 1/2\"", 368.3],
    ["6 ft", 1828.8],
    ["3.2\u00a0mm", 3.2],
    ["+3.2", 3.2],
    // Sheet gauges: Manufacturers' Standard Gauge.
    ["16 ga", 0.0598 * 25.4],
    ["16ga", 0.0598 * 25.4],
    ["10 gauge", 0.1345 * 25.4],
    ["11 gage", 0.1196 * 25.4],
  ])("%s", (text, expected) => expect(mm(text)).toBeCloseTo(expected, 9));

  test("a bare decimal follows the person's unit, a fraction is inches in either", () => {
    expect(inches(".035")).toBeCloseTo(0.889, 9);
    expect(inches("2")).toBe(50.8);
    expect(inches("2 mm")).toBe(2);
    expect(inches("1/8")).toBe(mm("1/8"));
  });

  test("stainless goes by its own gauge", () => {
    expect(mm("16 ga", { gaugeMetal: "stainless" })).toBeCloseTo(0.0625 * 25.4, 9);
  });
});

describe("what cannot be meant is refused by name", () => {
  test.each([
    ["", "number-missing"],
    ["   ", "number-missing"],
    ["thick", "number-not-understood"],
    ["1/8/2", "number-not-understood"],
    ["1.5/8", "number-not-understood"],
    ["3.2.1", "number-not-understood"],
    ["3..2", "number-not-understood"],
    ["1 ft 14 in", "number-not-understood"],
    ["1 ft 20 cm", "number-not-understood"],
    ["9".repeat(200), "number-not-understood"],
    ["-3", "number-negative"],
    ["−3 mm", "number-negative"],
    ["- 1/8", "number-negative"],
    ["0", "number-zero"],
    ["0/8", "number-zero"],
    ["-0", "number-zero"],
    ["1/0", "divided-by-zero"],
    ["1 1/0 in", "divided-by-zero"],
    ["1,234", "number-ambiguous"],
    ["12,500 mm", "number-ambiguous"],
    ["1,234.5", "number-grouped"],
    ["1.234,5", "number-grouped"],
    ["1 234", "number-grouped"],
    ["1,234,567", "number-grouped"],
    ["3-5", "number-is-range"],
    ["1/8-3/16", "number-is-range"],
    ["5 px", "unit-unknown"],
    ["5 constructor", "unit-unknown"],
    ["3 mm x", "unit-unknown"],
    ["1e9", "unit-unknown"],
    ["25 m", "number-too-large"],
    ["99999999", "number-too-large"],
    ["2 ga", "gauge-unknown"],
    ["16.5 ga", "gauge-unknown"],
    ["300 ga", "gauge-unknown"],
  ])("%s", (text, code) => expect(mm(text)).toBe(code));

  test("with its place, what was typed and what could be typed", () => {
    const read = parseLength("1,234", { default: "mm", path: ["setup", "thicknessMm"] });
    expect(read.ok ? null : read.issues).toEqual([
      {
        code: "number-ambiguous",
        path: ["setup", "thicknessMm"],
        data: { text: "1,234", example: "3.2 mm, 1/8 in or 16 ga", decimal: "1.234", whole: "1234" },
      },
    ]);
  });

  test("bounds are the caller's, inclusive, whatever the way of writing", () => {
    expect(mm("10", { max: 10 })).toBe(10);
    expect(mm("10.01", { max: 10 })).toBe("number-too-large");
    expect(mm("1/2 in", { max: 10 })).toBe("number-too-large");
    expect(mm("3 ga", { max: 5 })).toBe("number-too-large");
    expect(mm("1 ft 2 in", { max: 5 })).toBe("number-too-large");
    expect(mm("0.5", { min: 0.6 })).toBe("number-too-small");
    expect(mm("0", { allowZero: true })).toBe(0);
  });

  test("no text throws, and none gives a value that is not a positive finite length", () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string(), fc.stringMatching(/^[-0-9.,/ '"a-z]{0,70}$/), fc.string({ unit: "binary" })),
        (text) => {
          const read = parseLength(text, { default: "in" });
          return read.ok
            ? Number.isFinite(read.value) && read.value > 0 && read.value <= 20_000
            : read.issues.length === 1;
        },
      ),
      { numRuns: 2000 },
    );
  });

  test("a long run of look-alike characters is answered at once", async () => {
    const cost = await processorMs(() => {
      for (const part of ["1 ", "1'", "1/", ",", "1,111", "- "]) mm(part.repeat(400_000));
    });
    expect(cost).toBeLessThan(1000); // 4 s without the bound on length
  });
});

describe("gauge tables", () => {
  /**
   * Manufacturers' Standard Gauge: 41.82 lb/ft² per inch of thickness (the figure is printed with every published
   * table; 16 ga = 2.5 lb/ft² = .0598 in). 16 oz to the pound.
   */
  test.each(steelGauges.gauges)(
    "steel $number ga follows from its weight",
    ({ ozPerSqFt, inches: printed }) =>
      expect(Math.abs(ozPerSqFt / 16 / 41.82 - printed)).toBeLessThanOrEqual(0.00005),
  );

  /** United States Standard Gauge, 15 U.S.C. 206 (from memory): 640 oz/ft² per inch, e.g. 16 ga = 40 oz = 1/16 in. */
  test.each(stainlessGauges.gauges)(
    "stainless $number ga follows from its weight",
    ({ ozPerSqFt, inches: i }) => expect(Math.abs(ozPerSqFt / 640 - i)).toBeLessThanOrEqual(0.00005 + 1e-12),
  );

  test("a higher number is thinner, without gaps", () => {
    for (const { gauges } of [steelGauges, stainlessGauges]) {
      gauges.forEach((gauge, index) => {
        const next = gauges[index + 1];
        if (next === undefined) return;
        expect(next.number).toBe(gauge.number + 1);
        expect(next.inches).toBeLessThan(gauge.inches);
      });
    }
    expect(gaugeMm(16.5)).toBeNull();
    expect(gaugeMm(16)).toBeCloseTo(1.519, 3);
  });
});
