import { formatLength, lengthSystem, MM_PER_INCH, type UnitPreferences } from "@/lib/units";

/** A measured length in the person's units, with its expanded uncertainty where there is one. */
export function lengthText(mm: number, units: UnitPreferences, expandedUncertaintyMm = 0): string {
  return formatLength(mm, { system: lengthSystem(units.length), uncertaintyMm: expandedUncertaintyMm });
}

/** Steps in which a bound is stated: half a millimetre, a sixteenth of an inch. */
const BOUND_STEP = { mm: 0.5, in: MM_PER_INCH / 16 } as const;

/**
 * The size of a mark: with its uncertainty, or, where that is larger than the size itself, what it is certainly below:
 * 0.3 ± 1.2 mm reads "under 1.5 mm".
 */
export function markSizeText(mm: number, units: UnitPreferences, expandedUncertaintyMm: number): string {
  if (expandedUncertaintyMm <= mm) return lengthText(mm, units, expandedUncertaintyMm);
  const step = BOUND_STEP[units.length];
  const bound = Math.ceil((mm + expandedUncertaintyMm) / step - 1e-9) * step;
  return `under ${statedLengthText(bound, units)}`;
}

/** A stated length, as people say it: fractions in inches. */
export function statedLengthText(mm: number, units: UnitPreferences): string {
  return formatLength(mm, { system: lengthSystem(units.length), style: "fraction" });
}
