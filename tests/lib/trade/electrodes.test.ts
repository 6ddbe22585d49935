import { describe, expect, test } from "vitest";
import { electrodeClass, electrodeClasses, electrodeClassesFor, positionsMeant } from "@/lib/trade";

/**
 * Source of the polarity, gas and position columns: welding textbook, ch. 23, table of flux-cored electrode classes
 * (T-rows); product data sheets of E309LT0-3, E309LT1-1/-4 and E310T1-1/-4 (stainless rows, same digits).
 * GS: common practice, no source (the classification leaves it open).
 */
const polarityByClass: readonly [string, string, string, string][] = [
  // class, polarity, gas, positions
  ["E70T-1C", "DCEP", "CO2", "F H"],
  ["E70T-1M", "DCEP", "75Ar-25CO2 80Ar-20CO2", "F H"],
  ["E71T-1C", "DCEP", "CO2", "F H VU OH"],
  ["E71T-1M", "DCEP", "75Ar-25CO2 80Ar-20CO2", "F H VU OH"],
  ["E71T-9C", "DCEP", "CO2", "F H VU OH"],
  ["E71T-12M", "DCEP", "75Ar-25CO2 80Ar-20CO2", "F H VU OH"],
  ["E70T-3", "DCEP", "none", "F H"],
  ["E70T-4", "DCEP", "none", "F H"],
  ["E70T-5", "DCEP", "CO2", "F H"],
  ["E71T-5C", "DCEP DCEN", "CO2", "F H VU OH"],
  ["E70T-6", "DCEP", "none", "F H"],
  ["E70T-7", "DCEN", "none", "F H"],
  ["E71T-7", "DCEN", "none", "F H VU OH"],
  ["E70T-8", "DCEN", "none", "F H"],
  ["E71T-8", "DCEN", "none", "F H VU OH"],
  ["E70T-10", "DCEN", "none", "F H"],
  ["E70T-11", "DCEN", "none", "F H"],
  ["E71T-11", "DCEN", "none", "F H VD OH"],
  ["E71T-13", "DCEN", "none", "F H VD OH"],
  ["E71T-14", "DCEN", "none", "F H VD OH"],
  ["E71T-GS", "DCEN", "none", "F H VU VD OH"],
  ["E308LT0-3", "DCEP", "none", "F H"],
  ["E309LT0-3", "DCEP", "none", "F H"],
  ["E308LT1-1", "DCEP", "CO2", "F H VU OH"],
  ["E309LT1-4", "DCEP", "75Ar-25CO2 80Ar-20CO2", "F H VU OH"],
];
const short = { flat: "F", horizontal: "H", "vertical-up": "VU", "vertical-down": "VD", overhead: "OH" };

describe("polarity, gas and positions by classification", () => {
  test.each(polarityByClass)("%s runs %s, gas %s, positions %s", (id, polarity, gas, positions) => {
    const row = electrodeClass(id);
    expect(row?.id).toBe(id);
    expect(row?.polarity.join(" ")).toBe(polarity);
    expect(row?.gases.join(" ")).toBe(gas);
    expect(row?.positions.map((p) => short[p]).join(" ")).toBe(positions);
  });

  test("single-pass classes are those of the class table (T-2, T-3, T-10, T-13, T-14) and GS by trade use", () => {
    const single = electrodeClasses.filter((row) => row.passes === "single").map((row) => row.id);
    expect(new Set(single.map((id) => id.replace(/^E7[01]T-/, "").replace(/[CM]$/, "")))).toEqual(
      new Set(["2", "3", "10", "13", "14", "GS"]),
    );
  });

  test("the digit after E7 gives the position: 0 is flat and horizontal only", () => {
    for (const row of electrodeClasses.filter(
      (r) => /^E70T-|LT0-|^E310T0/.test(r.id) && r.positions.length > 0,
    ))
      expect(row.positions, row.id).toEqual(["flat", "horizontal"]);
  });
});

describe("electrodeClass reads what people write", () => {
  test.each([
    ["e71t-11", "E71T-11"],
    [" E71T 11 ", "E71T-11"],
    ["E71T11", "E71T-11"],
    ["E491T-11", "E71T-11"],
    ["AWS A5.20 E71T-GS", "E71T-GS"],
    ["E71T-1", "E71T-1"],
    ["E71T-1C", "E71T-1C"],
    ["E71T-1M", "E71T-1M"],
    ["E71T-1C/M", "E71T-1"],
    ["E71T-1C/-1M", "E71T-1"],
    ["E71T-1C/1M", "E71T-1"],
    ["E71T-1MJ H8", "E71T-1M"],
    ["E71T-1C-H4", "E71T-1C"],
    ["E71T1-C1A2-CS1", "E71T-1C"],
    ["E71T1-M21A2-CS1-H8", "E71T-1M"],
    ["E71T8-A2-CS3", "E71T-8"],
    ["e308lt1-1/-4", "E308LT1-1/-4"],
    ["E308LT1-1/4", "E308LT1-1/-4"],
    ["E308LT1", "E308LT1-1/-4"],
    ["E308LT-1", "E308LT1-1/-4"],
    ["E308L T0-3", "E308LT0-3"],
    ["E308LT0–3", "E308LT0-3"],
    ["er70s6", "ER70S-6"],
    ["E7018-1 H4R", "E7018"],
    ["6010", null],
    ["E60 10", "E6010"],
    ["E308L-16", "E308L-16"],
    ["some wire", null],
    ["E71T-99", null],
    ["", null],
  ])("%j is %j", (typed, id) => {
    expect(electrodeClass(typed)?.id ?? null).toBe(id);
  });

  test("every id in the table finds its own row, in any case and without hyphens where that is unambiguous", () => {
    for (const row of electrodeClasses) {
      expect(electrodeClass(row.id, row.process)).toBe(row);
      expect(electrodeClass(row.id.toLowerCase(), row.process)).toBe(row);
    }
  });

  test("one classification, wire or rod, by process", () => {
    expect(electrodeClass("ER308L", "GMAW")?.polarity).toEqual(["DCEP"]);
    expect(electrodeClass("ER308L", "GTAW")?.polarity).toEqual(["DCEN"]);
    expect(electrodeClass("ER308L")?.process).toBe("GMAW");
  });
});

test("id and process together are unique, and every row names a document", () => {
  const keys = electrodeClasses.map((row) => `${row.process} ${row.id}`);
  expect(new Set(keys).size).toBe(keys.length);
  for (const row of electrodeClasses) expect(row.source.document.length, row.id).toBeGreaterThan(10);
});

test("the picker's list is filtered by process, whole when the process is not known", () => {
  expect(electrodeClassesFor("SMAW").every((row) => row.process === "SMAW")).toBe(true);
  expect(electrodeClassesFor("SMAW").length).toBeGreaterThan(4);
  expect(electrodeClassesFor(null)).toBe(electrodeClasses);
});

test("vertical without a progression may be up or down; an unknown position may be any", () => {
  expect(positionsMeant("vertical", null)).toEqual(["vertical-up", "vertical-down"]);
  expect(positionsMeant("vertical", "down")).toEqual(["vertical-down"]);
  expect(positionsMeant("overhead", "up")).toEqual(["overhead"]);
  expect(positionsMeant(null, "up")).toHaveLength(5);
});
