import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  formatAmps,
  formatAngle,
  formatDuration,
  formatFlow,
  formatLength,
  formatThickness,
  formatTravelSpeed,
  formatVolts,
  formatWireDiameter,
  formatWireFeed,
  inch,
  inputText,
  metric,
  otherUnits,
  parseDuration,
  parseFlow,
  parseLength,
  parseTravelSpeed,
  parseWireDiameter,
  parseWireFeed,
  type UnitsIssue,
} from "@/lib/units";
import { wireSizes } from "@/lib/units/tables/wire-sizes";
import type { Result } from "@/lib/base";

const value = (read: Result<number, UnitsIssue>): number => {
  if (!read.ok) throw new Error(JSON.stringify(read.issues));
  return read.value;
};
/** Binary dust on top of the stated rounding. */
const DUST = 1e-9;

describe("lengths", () => {
  test.each([
    [3.175, "3.17 mm", "0.125 in", "1/8 in"], // 3.175 has no exact binary form: it lies just under the half
    [3.2, "3.2 mm", "0.126 in", "1/8 in"],
    [25.4, "25.4 mm", "1 in", "1 in"],
    [28.575, "28.57 mm", "1.125 in", "1 1/8 in"],
    [0.3, "0.3 mm", "0.012 in", "1/64 in"],
    [100, "100 mm", "3.937 in", "3 15/16 in"],
    [0, "0 mm", "0 in", "0 in"],
    [0.001, "under 0.01 mm", "under 0.001 in", "under 1/64 in"],
  ])("%d mm", (mm, metricText, decimal, fraction) => {
    expect(formatLength(mm, { system: "metric" })).toBe(metricText);
    expect(formatLength(mm, { system: "inch" })).toBe(decimal);
    expect(formatLength(mm, { system: "inch", style: "fraction" })).toBe(fraction);
  });

  test.each([
    [3.249, 0.28, "3.2 ± 0.3 mm"],
    [3.249, 0.14, "3.25 ± 0.14 mm"],
    [3.2, 0.1, "3.20 ± 0.10 mm"],
    [3.2, 0.3, "3.2 ± 0.3 mm"],
    [41.7, 12.2, "42 ± 13 mm"],
    [5, 0.021, "5.00 ± 0.03 mm"],
  ])("%d mm known to %d mm", (mm, uncertaintyMm, text) =>
    expect(formatLength(mm, { system: "metric", uncertaintyMm })).toBe(text),
  );

  test("fractions are no finer than the value is known", () => {
    const at = (mm: number, uncertaintyMm: number) =>
      formatLength(mm, { system: "inch", style: "fraction", uncertaintyMm });
    expect(at(3.175, 0.3)).toBe("1/8 ± 1/64 in");
    expect(at(3.3, 0.3)).toBe("1/8 ± 1/32 in");
    // 26 mm is 65.5/64 in, 3 mm is 7.6/64: in 32nds 1 1/32, and 7.6 + 0.5 of rounding is covered by 5/32.
    expect(at(26, 3)).toBe("1 1/32 ± 5/32 in");
    expect(at(100, 20)).toBe("3.9 ± 0.8 in");
  });

  test("a length that is no length is our own mistake", () => {
    expect(() => formatLength(Number.NaN, { system: "metric" })).toThrow("broken invariant");
    expect(() => formatLength(-1, { system: "inch", style: "fraction" })).toThrow("broken invariant");
  });

  const length = fc.double({ min: 0.01, max: 19_999, noNaN: true });

  test("what is printed reads back within its rounding", () => {
    fc.assert(
      fc.property(length, (mm) => {
        const back = (text: string) =>
          text.startsWith("under") ? null : value(parseLength(text, { default: "mm" }));
        const near = (text: string, half: number) => {
          const read = back(text);
          return read === null ? mm < half * 2 : Math.abs(read - mm) <= half + DUST;
        };
        return (
          near(formatLength(mm, { system: "metric" }), 0.005) &&
          near(formatLength(mm, { system: "inch" }), 0.0005 * 25.4) &&
          near(formatLength(mm, { system: "inch", style: "fraction" }), 25.4 / 128)
        );
      }),
    );
  });

  test("the printed fraction interval contains the true one", () => {
    fc.assert(
      fc.property(length, fc.double({ min: 0.001, max: 12.7, noNaN: true }), (mm, uncertaintyMm) => {
        const text = formatLength(mm, { system: "inch", style: "fraction", uncertaintyMm });
        const [middle = "", spread = ""] = text.replace(" in", "").split(" ± ");
        const read = (part: string) =>
          part === "0" ? 0 : value(parseLength(`${part} in`, { default: "in" }));
        return (
          read(middle) - read(spread) <= mm - uncertaintyMm + 1e-6 &&
          read(middle) + read(spread) >= mm + uncertaintyMm - 1e-6
        );
      }),
    );
  });

  test("the printed decimal uncertainty is never smaller than the true one, nor twice as large", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 50, noNaN: true }), (uncertaintyMm) => {
        const text = formatLength(1000, { system: "metric", uncertaintyMm });
        const printed = Number(text.replace(" mm", "").split(" ± ")[1]);
        return printed >= uncertaintyMm - DUST && printed <= uncertaintyMm * 2;
      }),
    );
  });
});

describe("sizes by their trade names", () => {
  test.each([
    [0.9, "0.9 mm", ".035 in"],
    [1.2, "1.2 mm", ".045 in"],
    [1.143, "1.2 mm", ".045 in"],
    [1.6, "1.6 mm", "1/16 in"],
    [2.5, "2.5 mm", "3/32 in"],
    [1.1, "1.1 mm", "0.043 in"],
  ])("%d mm wire", (mm, metricText, inchText) => {
    expect(formatWireDiameter(mm, "metric")).toBe(metricText);
    expect(formatWireDiameter(mm, "inch")).toBe(inchText);
  });

  test("sheet and plate", () => {
    expect(formatThickness(0.0598 * 25.4, "inch")).toBe("16 ga (0.06 in)");
    expect(formatThickness(0.0625 * 25.4, "inch", "stainless")).toBe("1/16 in");
    expect(formatThickness(0.05 * 25.4, "inch", "stainless")).toBe("18 ga (0.05 in)");
    expect(formatThickness(9.525, "inch")).toBe("3/8 in");
    expect(formatThickness(10, "inch")).toBe("0.394 in");
    expect(formatThickness(10, "metric")).toBe("10 mm");
    expect(formatThickness(0, "inch")).toBe("0 in");
  });
});

describe("rates", () => {
  test("in either unit", () => {
    expect(formatWireFeed(7.62, "m/min")).toBe("7.62 m/min");
    expect(formatWireFeed(7.62, "in/min")).toBe("300 in/min");
    expect(formatTravelSpeed(254, "mm/min")).toBe("254 mm/min");
    expect(formatTravelSpeed(254, "in/min")).toBe("10 in/min");
    expect(formatFlow(16.518, "L/min")).toBe("16.5 L/min");
    expect(formatFlow(16.518, "cfh")).toBe("35 cfh");
    expect(formatFlow(0, "cfh")).toBe("0 cfh");
    expect(formatVolts(18.52)).toBe("18.5 V");
    expect(formatAmps(139.6)).toBe("140 A");
    expect(formatAngle(15.2)).toBe("15°");
    expect(formatDuration(93)).toBe("1 min 33 s");
    expect(formatDuration(8.54)).toBe("8.5 s");
    expect(formatDuration(59.97)).toBe("1 min");
    expect(formatDuration(3725)).toBe("1 h 2 min 5 s");
    expect(formatDuration(0)).toBe("0 s");
    expect(otherUnits(metric)).toEqual(inch);
    expect(otherUnits(inch)).toEqual(metric);
  });

  test("what is printed reads back within its rounding", () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 39, noNaN: true }), (v) => {
        const feed = (unit: "m/min" | "in/min") =>
          value(parseWireFeed(formatWireFeed(v, unit), { default: "m/min" }));
        const speed = (unit: "mm/min" | "in/min") =>
          value(parseTravelSpeed(formatTravelSpeed(v * 100, unit), { default: "mm/min" }));
        const flow = (unit: "L/min" | "cfh") => value(parseFlow(formatFlow(v, unit), { default: "L/min" }));
        return (
          Math.abs(feed("m/min") - v) <= 0.005 + DUST &&
          Math.abs(feed("in/min") - v) <= 0.0127 + DUST &&
          Math.abs(speed("mm/min") - v * 100) <= 0.5 + DUST &&
          Math.abs(speed("in/min") - v * 100) <= 1.27 + DUST &&
          Math.abs(flow("L/min") - v) <= 0.05 + DUST &&
          Math.abs(flow("cfh") - v) <= 28.316846592 / 120 + DUST
        );
      }),
    );
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 35_000, noNaN: true }), (s) => {
        const back = value(parseDuration(formatDuration(s)));
        return Math.abs(back - s) <= (s < 59.95 ? 0.05 : 0.5) + DUST;
      }),
    );
  });
});

describe("the text of an input field", () => {
  test("comes back as it was typed", () => {
    const feed = value(parseWireFeed("300", { default: "in/min" }));
    expect(inputText("wireFeed", feed, inch)).toBe("300");
    expect(inputText("flow", value(parseFlow("35", { default: "cfh" })), inch)).toBe("35");
    expect(inputText("travel", value(parseTravelSpeed("9.5", { default: "in/min" })), inch)).toBe("9.5");
    expect(inputText("length", value(parseLength("1 1/8", { default: "in" })), inch)).toBe("1 1/8");
    expect(inputText("length", value(parseLength("0.3", { default: "in" })), inch)).toBe("0.3");
    expect(inputText("length", 3.175, metric)).toBe("3.175");
    expect(inputText("plain", 18.5, inch)).toBe("18.5");
    expect(inputText("length", null, inch)).toBe("");
    expect(inputText("length", 0, inch)).toBe("0");
    for (const { mm } of wireSizes) {
      for (const [units, unit] of [
        [metric, "mm"],
        [inch, "in"],
      ] as const) {
        const text = inputText("wireDiameter", mm, units);
        const back = value(parseWireDiameter(text, { default: unit }));
        expect(wireSizes.find((size) => size.mm === back)?.inchName).toBe(
          wireSizes.find((size) => size.mm === mm)?.inchName,
        );
      }
    }
  });

  test("reads back as the stored value, in either system", () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 19_000, noNaN: true }), (mm) =>
        (["mm", "in"] as const).every((unit) => {
          const text = inputText("length", mm, unit === "mm" ? metric : inch);
          return Math.abs(value(parseLength(text, { default: unit })) - mm) <= mm * 1e-8;
        }),
      ),
    );
  });
});
