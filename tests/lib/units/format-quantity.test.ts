import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bareQuantity, formatQuantity, formatFigures, type PrintedQuantity } from "@/lib/units";
import { rounding, type Printed } from "@/lib/units/tables/rounding";

const systems = ["metric", "inch"] as const;
const quantities = Object.keys(rounding) as PrintedQuantity[];

describe("a quantity in words", () => {
  // Exact: 1 in = 25.4 mm and 1 lb = 0.45359237 kg (international yard and pound); °F = 9/5 °C + 32.
  it.each([
    ["heatInput", 1.25, "1.25 kJ/mm", "31.8 kJ/in"],
    ["temperature", 100, "100 °C", "212 °F"],
    ["temperature", -40, "−40 °C", "−40 °F"],
    ["area", 645.16, "645.2 mm²", "1 in²"],
    ["mass", 0.45359237, "0.45 kg", "1 lb"],
    ["depositionRate", 4.5359237, "4.5 kg/h", "10 lb/h"],
    ["wireRun", 30.48, "30 m", "100 ft"],
    ["gasVolume", 28.316846592, "28 L", "1 ft³"],
    ["wireFeed", 7.62, "7.62 m/min", "300 in/min"],
    ["carbonEquivalent", 0.3, "0.30 %", "0.30 %"],
    ["length", -0.81, "−0.81 mm", "−0.032 in"],
    ["length", 0.001, "under 0.01 mm", "under 0.001 in"],
  ] as const)("%s of %d", (quantity, value, metric, inch) => {
    expect(formatQuantity(quantity, value, "metric")).toBe(metric);
    expect(formatQuantity(quantity, value, "inch")).toBe(inch);
  });

  it("ends at the last printed place of its uncertainty", () => {
    expect(formatQuantity("area", 65.04, "metric", 4.6)).toBe("65 ± 5 mm²");
    expect(formatQuantity("length", -0.81, "metric", 0.14)).toBe("−0.81 ± 0.14 mm");
    expect(formatQuantity("length", -0.001, "metric", 0.5)).toBe("0.0 ± 0.5 mm");
  });

  it("names the unit once where the axis does", () => {
    expect(bareQuantity("modelLength", 25.4, "inch")).toBe("1");
    expect(bareQuantity("tenths", 2.04, "metric")).toBe("2");
    expect(formatFigures("length", 0.0314, "metric", 2)).toBe("0.031 mm");
    expect(formatFigures("length", -2.164, "metric", 3)).toBe("−2.16 mm");
    expect(formatFigures("thousandths", 0.0762, "inch", 2)).toBe("3 thousandths of an inch");
  });
});

describe("for every row of the rounding table", () => {
  const amount = fc.double({ min: 0.01, max: 9_000, noNaN: true });
  const numberOf = (text: string, { suffix }: Printed): number =>
    Number(text.slice(0, text.length - suffix.length).replace("−", "-"));

  it.each(quantities)("%s reads back within half of its last place, on either side of nought", (quantity) => {
    fc.assert(
      fc.property(amount, fc.constantFrom(1, -1), fc.constantFrom(...systems), (size, sign, system) => {
        const printed: Printed = rounding[quantity][system];
        const value = sign * size;
        const text = formatQuantity(quantity, value, system);
        if (text.startsWith("under"))
          return Math.abs(value / printed.per + (printed.plus ?? 0)) < 10 ** -printed.places;
        const back = (numberOf(text, printed) - (printed.plus ?? 0)) * printed.per;
        return Math.abs(back - value) <= (printed.per * 10 ** -printed.places) / 2 + 1e-9 * Math.max(1, size);
      }),
      { seed: 22, numRuns: 200 },
    );
  });

  it.each(quantities)(
    "the interval printed of %s holds the true one up to half of the value's last place",
    (quantity) => {
      fc.assert(
        fc.property(amount, amount, fc.constantFrom(...systems), (value, uncertainty, system) => {
          const printed: Printed = rounding[quantity][system];
          const [middle = "", spread = ""] = formatQuantity(quantity, value, system, uncertainty).split(
            " ± ",
          );
          const half = Number(spread.slice(0, spread.length - printed.suffix.length)) * printed.per;
          const places = middle.split(".")[1]?.length ?? 0;
          const read = (Number(middle.replace("−", "-")) - (printed.plus ?? 0)) * printed.per;
          return (
            half >= uncertainty - 1e-9 * uncertainty &&
            half <= 2 * uncertainty &&
            Math.abs(read - value) <= (printed.per * 10 ** -places) / 2 + 1e-9 * Math.max(1, value)
          );
        }),
        { seed: 23, numRuns: 200 },
      );
    },
  );
});
