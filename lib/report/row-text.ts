import type { RowLimit, VerdictRow } from "@/lib/accept";
import { formatQuantity, lengthSystem, type UnitPreferences } from "@/lib/units";

/** Which row of the rounding table a figure of a clause is printed by. */
const printedAs = {
  mm: "length",
  mm2: "area",
  deg: "measuredAngle",
  ratio: "ratio",
  count: "count",
} as const;

/** A figure of a clause with its ±; one that is short of or beyond what was asked may lie on the other side of nought. */
export function figureText(
  value: number,
  u: number | null,
  unit: RowLimit["unit"],
  units: UnitPreferences,
): string {
  return formatQuantity(printedAs[unit], value, lengthSystem(units.length), u ?? 0);
}

/** What was read for a clause: "read 0.7 ± 0.1 mm"; empty when nothing was. */
export function rowValueText(row: VerdictRow, units: UnitPreferences): string {
  if (row.value === null) return "";
  return `read ${figureText(row.value, row.expandedUncertainty, row.limit?.unit ?? "mm", units)}`;
}

/** The clause's limit for this weld, with its formula in the symbols of the standard; empty when it has no number. */
export function rowLimitText(row: VerdictRow, units: UnitPreferences): string {
  if (!row.limit) return "";
  const { comparison, value, unit, formula } = row.limit;
  const word = comparison === "<=" ? "at most" : "at least";
  // A formula that is only the number again says nothing.
  const how = Number.isFinite(Number(formula)) ? "" : ` (${formula})`;
  return `limit ${word} ${figureText(value, null, unit, units)}${how}`;
}
