import { MM_PER_INCH } from "@/lib/base";
import { spanText } from "@/lib/setup";
import { formatAmps, formatLength, lengthSystem, type UnitPreferences } from "@/lib/units";
import type { Given, GivenCode } from "./gives";

const POUNDS_PER_KG = 1 / 0.45359237;
const L_PER_FT3 = 28.316846592;

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

/** A value in the person's units, with as many places as its error deserves. */
function show({ unit }: Given, value: number, units: UnitPreferences): string {
  const isInch = units.length === "in";
  switch (unit) {
    case "A":
      return formatAmps(value);
    case "kW":
      return `${value.toFixed(1)} kW`;
    case "kJ/mm":
      return isInch ? `${(value * MM_PER_INCH).toFixed(1)} kJ/in` : `${value.toFixed(2)} kJ/mm`;
    case "mm":
      return isInch
        ? formatLength(value, { system: lengthSystem(units.length), style: "fraction" })
        : `${value.toFixed(1)} mm`;
    case "kg/h":
      return isInch ? `${(value * POUNDS_PER_KG).toFixed(1)} lb/h` : `${value.toFixed(1)} kg/h`;
    case "count":
      return value.toFixed(0);
    case "min":
      return `${value.toFixed(value < 10 ? 1 : 0)} min`;
    case "kg":
      return isInch ? `${(value * POUNDS_PER_KG).toFixed(2)} lb` : `${value.toFixed(2)} kg`;
    case "m":
      return isInch ? `${((value * 1000) / MM_PER_INCH / 12).toFixed(0)} ft` : `${value.toFixed(0)} m`;
    case "L":
      return isInch ? `${(value / L_PER_FT3).toFixed(1)} ft³` : `${value.toFixed(0)} L`;
  }
}

/** What a plan gives, in words: its name, the value, and between what the truth is to be expected. */
export function givenText(one: Given, units: UnitPreferences) {
  const value = show(one, one.value, units);
  const range = spanText(show(one, one.low, units), show(one, one.high, units));
  return { label: labels[one.code], value, range: range === value ? null : range };
}
