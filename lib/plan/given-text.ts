import { spanText } from "@/lib/setup";
import {
  formatLength,
  formatQuantity,
  lengthSystem,
  type PrintedQuantity,
  type UnitPreferences,
} from "@/lib/units";
import type { Given, GivenCode } from "./gives";

const labels: Readonly<Record<GivenCode, string>> = {
  amps: "Current",
  "arc-power": "Arc power",
  "arc-energy": "Arc energy",
  "heat-input": "Heat input",
  leg: "Leg of a pass",
  "leg-in-all": "Leg in all",
  "bead-width": "Bead width",
  "step-over": "Step over",
  deposition: "Metal laid",
  passes: "Passes",
  "arc-time": "Arc time",
  "wire-mass": "Wire",
  "wire-length": "Wire run off",
  gas: "Gas",
};

/** Which row of the rounding table each unit of the plan is printed by. */
const printedAs = {
  A: "current",
  kW: "power",
  "kJ/mm": "heatInput",
  mm: "modelLength",
  "kg/h": "depositionRate",
  count: "count",
  min: "minutes",
  kg: "mass",
  m: "wireRun",
  L: "gasVolume",
} as const satisfies Readonly<Record<Given["unit"], PrintedQuantity>>;

/** A value in the person's units; lengths in inches as a rule reads them. */
function show({ unit }: Given, value: number, units: UnitPreferences): string {
  const system = lengthSystem(units.length);
  if (unit === "mm" && system === "inch") return formatLength(value, { system, style: "fraction" });
  return formatQuantity(unit === "min" && value >= 10 ? "wholeMinutes" : printedAs[unit], value, system);
}

/** What a plan gives, in words: its name, the value, and between what the truth is to be expected. */
export function givenText(one: Given, units: UnitPreferences) {
  const value = show(one, one.value, units);
  const range = spanText(show(one, one.low, units), show(one, one.high, units));
  return { label: labels[one.code], value, range: range === value ? null : range };
}
