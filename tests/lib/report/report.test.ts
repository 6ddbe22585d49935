import { describe, expect, it } from "vitest";
import { emptyRunSetup } from "@/lib/setup";
import {
  changeText,
  dayText,
  lengthText,
  rowLimitText,
  rowValueText,
  setupRows,
  sizeText,
} from "@/lib/report";
import { setupLine } from "@/lib/report/setup-rows";
import { statedLengthText } from "@/lib/report/length-text";
import { valueText } from "@/lib/report/amount-text";
import { inch, metric } from "@/lib/units";
import type { VerdictRow } from "@/lib/accept";
import type { Change } from "@/lib/diagnose";

const setup = {
  ...emptyRunSetup,
  process: "FCAW-S" as const,
  electrodeClass: "E71T-11",
  electrodeDiameterMm: 0.9,
  wireFeedMPerMin: 7.112,
  ctwdMm: 19.05,
  joint: "tee" as const,
  position: "vertical" as const,
  progression: "up" as const,
};

describe("the set-up in words", () => {
  it("has no row for what is unknown", () => {
    expect(setupRows(emptyRunSetup, metric)).toEqual([]);
    expect(setupLine(emptyRunSetup, metric)).toBe("Set-up not recorded");
  });

  it("speaks the person's units: 280 in/min is 7.112 m/min, 3/4 in is 19.05 mm", () => {
    const value = (units: typeof metric, label: string) =>
      setupRows(setup, units).find((row) => row.label === label)?.value;
    expect(value(inch, "Wire feed")).toBe("280 in/min");
    expect(value(inch, "Tip to work")).toBe("3/4 in");
    expect(value(metric, "Wire feed")).toBe("7.11 m/min");
    expect(setupLine(setup, inch)).toBe("E71T-11 .035 in · T-joint, vertical up");
  });
});

describe("changes in words", () => {
  const change = {
    direction: "lower",
    quantity: "stick-out",
    unitKind: "small-length",
    fromSi: 32,
    toSi: 19,
    stepSi: -13,
    fromText: null,
    toText: null,
  } as Change;

  it("name both ends and the way", () => {
    expect(changeText(change, metric)).toBe("Stick-out from 32 mm down to 19 mm");
    expect(changeText({ ...change, fromSi: null }, metric)).toBe("Stick-out to 19 mm");
    expect(changeText({ ...change, fromSi: null, toSi: null, stepSi: -6 }, metric)).toBe(
      "Stick-out down by 6 mm",
    );
    expect(changeText({ ...change, fromText: "DCEP", toText: "DCEN" }, metric)).toBe("From DCEP to DCEN");
  });

  it("propose nothing finer than anybody can set", () => {
    const volts = { ...change, quantity: "voltage", unitKind: "voltage", fromSi: 29, toSi: 25.71 } as Change;
    expect(changeText(volts, metric)).toBe("Voltage from 29 V down to 25.5 V");
    expect(changeText({ ...change, toSi: 22.22 }, metric)).toBe("Stick-out from 32 mm down to 22 mm");
    expect(changeText({ ...change, toSi: 19.3 }, inch)).toMatch(/down to 3\/4 in$/);
    const feed = {
      ...change,
      quantity: "wire feed",
      unitKind: "wire-feed",
      fromSi: null,
      toSi: 4.18,
      direction: "set",
    } as Change;
    expect(changeText(feed, metric)).toBe("Wire feed to 4.2 m/min");
    expect(changeText(feed, inch)).toBe("Wire feed to 165 in/min");
  });

  it("convert heat input and temperature with the units", () => {
    // 1.781 kJ/mm is 45.24 kJ/in: the worked example H1 of a trade article on heat input (29 V, 325 A, 12.5 in/min).
    expect(valueText(1.781, "heat-input", inch)).toBe("45.2 kJ/in");
    expect(valueText(150, "temperature", inch)).toBe("302 °F");
  });
});

describe("clauses in words", () => {
  const row = {
    value: 0.7,
    expandedUncertainty: 0.1,
    limit: { comparison: "<=", value: 0.5, unit: "mm", expandedUncertainty: 0, formula: "min(0.1 t, 0.5)" },
  } as VerdictRow;

  it("show reading, limit and formula", () => {
    expect(rowValueText(row, metric)).toBe("read 0.70 ± 0.10 mm");
    expect(rowLimitText(row, metric)).toBe("limit at most 0.5 mm (min(0.1 t, 0.5))");
  });
});

describe("sizes in words", () => {
  it("say no scale, never pixels", () => {
    const measured = {
      id: "u",
      imperfection: "undercut" as const,
      place: null,
      stretch: null,
      alongMm: null,
      lengthMm: null,
      depthMm: null,
      heightMm: null,
      diameterMm: null,
      areaMm2: null,
      issues: [{ code: "no-scale" as const, path: [], data: {} }],
    };
    expect(sizeText(measured, metric)).toBe("no scale");
  });

  it("print a length with its uncertainty, and a stated one as people say it", () => {
    expect(lengthText(12.3, metric, 0.62)).toBe("12.3 ± 0.7 mm");
    expect(statedLengthText(50.8, inch)).toBe("2 in");
  });
});

it("days are written out", () => {
  expect(dayText("2026-11-05T09:00:00.000Z")).toBe("5 November 2026");
});
