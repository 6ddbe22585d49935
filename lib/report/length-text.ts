import { formatLength, lengthSystem, type UnitPreferences } from "@/lib/units";

/** A measured length in the person's units, with its expanded uncertainty where there is one. */
export function lengthText(mm: number, units: UnitPreferences, expandedUncertaintyMm = 0): string {
  return formatLength(mm, { system: lengthSystem(units.length), uncertaintyMm: expandedUncertaintyMm });
}

/** A stated length, as people say it: fractions in inches. */
export function statedLengthText(mm: number, units: UnitPreferences): string {
  return formatLength(mm, { system: lengthSystem(units.length), style: "fraction" });
}
