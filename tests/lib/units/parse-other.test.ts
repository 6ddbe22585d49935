import { describe, expect, test } from "vitest";
import {
  parseAmps,
  parseAngle,
  parseDuration,
  parseFlow,
  parseOrUnknown,
  parseTravelSpeed,
  parseVolts,
  parseWireDiameter,
  parseWireFeed,
  unitsSentence,
  type UnitsIssue,
} from "@/lib/units";
import { unitsIssueCodes } from "@/lib/units/issue";
import { unitsSentences } from "@/lib/units/sentences";
import { wireSizes } from "@/lib/units/tables/wire-sizes";
import type { Result } from "@/lib/base";

const out = (read: Result<number | null, UnitsIssue>) => (read.ok ? read.value : read.issues[0]?.code);

/**
 * Factors from NIST SP 811 (2008), Appendix B.8, from memory: inch = 2.54 E-02 m (exact), foot = 3.048 E-01 m (exact),
 * inch per second = 2.54 E-02 m/s (exact), cubic foot = 2.831 685 E-02 m³, cubic foot per minute = 4.719 474 E-04 m³/s.
 */
describe("rates against NIST SP 811", () => {
  test.each([
    ["300 in/min", 7.62],
    ["300ipm", 7.62],
    ["300 IPM", 7.62],
    ["300 in per min", 7.62],
    ["300 in./min", 7.62],
    ["7.62 m/min", 7.62],
    ["7,62", 7.62],
    ["762 cm/min", 7.62],
    ["127 mm/s", 7.62],
    ["5 in/s", 0.0254 * 5 * 60],
  ])("wire feed %s", (text, expected) =>
    expect(out(parseWireFeed(text, { default: "m/min" }))).toBeCloseTo(expected, 9),
  );

  test.each([
    ["10 in/min", 254],
    ["10 ipm", 254],
    ["25.4 cm/min", 254],
    ["254", 254],
    ["4 mm/s", 240],
    ["0.25 m/min", 250],
  ])("travel %s", (text, expected) =>
    expect(out(parseTravelSpeed(text, { default: "mm/min" }))).toBeCloseTo(expected, 9),
  );

  test("35 cfh is 35/60 ft³/min: 35/60 x 4.719474e-4 m³/s", () => {
    const expected = (35 / 60) * 4.719474e-4 * 1000 * 60; // L/min; seven figures in the table
    for (const text of ["35 cfh", "35 CFH", "35 ft³/h", "35 cu ft/hr", "35 scfh"]) {
      const read = out(parseFlow(text, { default: "L/min" }));
      expect(Math.abs(Number(read) - expected)).toBeLessThan(expected * 1e-6);
    }
  });

  test.each([
    ["17", 17],
    ["17 L/min", 17],
    ["17 lpm", 17],
    ["1.02 m3/h", 17],
  ])("flow %s", (text, expected) =>
    expect(out(parseFlow(text, { default: "L/min" }))).toBeCloseTo(expected, 9),
  );

  test("a bare number is in the person's unit", () => {
    expect(out(parseWireFeed("300", { default: "in/min" }))).toBeCloseTo(7.62, 9);
    expect(out(parseTravelSpeed("10", { default: "in/min" }))).toBeCloseTo(254, 9);
    expect(out(parseFlow("35", { default: "cfh" }))).toBeCloseTo(16.5181605, 6);
  });

  test("a feed typed without its unit in the other system is too large, not taken", () => {
    expect(out(parseWireFeed("300", { default: "m/min" }))).toBe("number-too-large");
    expect(out(parseFlow("0", { default: "cfh" }))).toBe("number-zero");
    expect(out(parseFlow("0", { default: "cfh", allowZero: true }))).toBe(0);
    expect(out(parseWireFeed("300 in", { default: "m/min" }))).toBe("unit-unknown");
    expect(out(parseWireFeed("300 in/min/s", { default: "m/min" }))).toBe("unit-unknown");
    expect(out(parseTravelSpeed("-4 in/min", { default: "m/min" as "mm/min" }))).toBe("number-negative");
  });
});

describe("volts, amps, angles", () => {
  test("with and without a unit", () => {
    expect(out(parseVolts("18,5 V"))).toBe(18.5);
    expect(out(parseVolts("18.5 volts"))).toBe(18.5);
    expect(out(parseAmps("140A"))).toBe(140);
    expect(out(parseAngle("15°"))).toBe(15);
    expect(out(parseAngle("15 deg"))).toBe(15);
    expect(out(parseAngle("0"))).toBe(0);
  });
  test("refused", () => {
    expect(out(parseVolts("18-20 V"))).toBe("number-is-range");
    expect(out(parseVolts("230"))).toBe("number-too-large");
    expect(out(parseVolts("18 A"))).toBe("unit-unknown");
    expect(out(parseVolts("0"))).toBe("number-zero");
    expect(out(parseAmps("-20"))).toBe("number-negative");
    expect(out(parseAngle("181"))).toBe("number-too-large");
    expect(out(parseAngle("-15"))).toBe("number-negative");
  });
  test("an empty field is not known, which is no error", () => {
    expect(out(parseOrUnknown("  ", parseVolts))).toBeNull();
    expect(out(parseOrUnknown("x", parseVolts))).toBe("number-not-understood");
    expect(out(parseOrUnknown("20", parseVolts))).toBe(20);
  });
});

describe("arc time", () => {
  test.each([
    ["93", 93],
    ["93 s", 93],
    ["1:33", 93],
    ["1:02:05", 3725],
    ["1 min 33 s", 93],
    ["1min33s", 93],
    ["1m33s", 93],
    ["1'33\"", 93],
    ["1.5 min", 90],
    ["1,55 min", 93],
    ["90 min", 5400],
    ["1 h 2 min", 3720],
    ["8.5 s", 8.5],
    ["2 hours", 7200],
  ])("%s", (text, expected) => expect(out(parseDuration(text))).toBeCloseTo(expected, 9));

  test("1 min 33 s is 1.55 min, not 1.33 min", () => {
    expect(out(parseDuration("1:33"))).toBe(out(parseDuration("1.55 min")));
  });

  test.each([
    ["1:75", "clock-out-of-range"],
    ["1:60:00", "clock-out-of-range"],
    ["1 min 60 s", "clock-out-of-range"],
    ["", "number-missing"],
    ["-5 s", "number-negative"],
    ["0:00", "number-zero"],
    ["11:00:00", "number-too-large"],
    ["5 days", "unit-unknown"],
    ["soon", "number-not-understood"],
    ["1:".repeat(100), "number-not-understood"],
  ])("%s is refused", (text, code) => expect(out(parseDuration(text))).toBe(code));
});

describe("wire and rod sizes", () => {
  /** Nominal pairs as AWS A5.20/A5.20M and A5.1/A5.1M list them, from memory. */
  test.each([
    [".035", 0.9],
    ["0,035", 0.9],
    [".035 in", 0.9],
    ["0.9", 0.9],
    [".045", 1.2],
    ["0.045 in", 1.2],
    ["1.2 mm", 1.2],
    ["1/16", 1.6],
    ["5/64", 2],
    ["3/32", 2.4],
    ["2,5", 2.5],
    ["1/8 in", 3.2],
    ["3.2", 3.2],
    ["1.1", 1.1],
  ])("%s", (text, expected) =>
    expect(out(parseWireDiameter(text, { default: "mm" }))).toBeCloseTo(expected, 12),
  );

  test("the same in inches by preference", () => {
    expect(out(parseWireDiameter(".045", { default: "in" }))).toBe(1.2);
    expect(out(parseWireDiameter("1.2 mm", { default: "in" }))).toBe(1.2);
    expect(out(parseWireDiameter("1.2", { default: "in" }))).toBe("number-too-large");
  });

  test("each listed size is found by its metric name, and its inch name gives a size of that name", () => {
    for (const size of wireSizes) {
      expect(out(parseWireDiameter(`${size.mm} mm`, { default: "in" }))).toBe(size.mm);
      const byInch = out(parseWireDiameter(`${size.inchName} in`, { default: "mm" }));
      const sameName = wireSizes.filter(({ inchName }) => inchName === size.inchName).map(({ mm }) => mm);
      expect(sameName).toContain(byInch);
    }
    expect(out(parseWireDiameter("1/4", { default: "in" }))).toBe(6.4);
  });

  test("no two sizes are so near that one could be read as the other", () => {
    wireSizes
      .slice(1)
      .forEach(({ mm }, index) => expect(mm - wireSizes[index]!.mm).toBeGreaterThan(2 * 0.02));
  });
});

describe("every refusal has one sentence", () => {
  test("that names what to type and leaves no gap", () => {
    expect(Object.keys(unitsSentences).sort()).toEqual([...unitsIssueCodes].sort());
    const refusals = [
      parseVolts(""),
      parseVolts("x"),
      parseVolts("-1"),
      parseVolts("0"),
      parseVolts("1", { min: 5 }),
      parseVolts("1000 V"),
      parseVolts("1,234"),
      parseVolts("1 234"),
      parseVolts("18-20"),
      parseVolts("1/0"),
      parseVolts("18 km"),
      parseWireDiameter("99 ga", { default: "mm" }),
      parseDuration("1:75"),
    ].flatMap((read) => (read.ok ? [] : read.issues));
    expect(refusals.map(({ code }) => code).sort()).toEqual([...unitsIssueCodes].sort());
    for (const refusal of refusals) {
      const sentence = unitsSentence(refusal);
      expect(sentence).not.toMatch(/undefined|NaN|null|\s{2}/);
      expect(sentence).toMatch(/Type|Check/);
    }
  });
});
