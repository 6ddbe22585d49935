import type { VerdictRow } from "@/lib/accept";
import type { UnitPreferences } from "@/lib/units";
import { lengthText } from "./length-text";

function figure(value: number, u: number | null, unit: string, units: UnitPreferences): string {
  // A shortfall or an excess may lie on the other side: a throat thinner than asked for has a negative excess.
  if (unit === "mm") return `${value < 0 ? "−" : ""}${lengthText(Math.abs(value), units, u ?? 0)}`;
  const digits = unit === "count" ? 0 : unit === "ratio" ? 2 : 1;
  const suffix = unit === "mm2" ? " mm²" : unit === "deg" ? "°" : "";
  const spread = u ? ` ± ${u.toFixed(digits)}` : "";
  return `${value.toFixed(digits)}${spread}${suffix}`;
}

/** What was read for a clause: "read 0.7 ± 0.1 mm"; empty when nothing was. */
export function rowValueText(row: VerdictRow, units: UnitPreferences): string {
  if (row.value === null) return "";
  return `read ${figure(row.value, row.expandedUncertainty, row.limit?.unit ?? "mm", units)}`;
}

/** The clause's limit for this weld, with its formula in the symbols of the standard; empty when it has no number. */
export function rowLimitText(row: VerdictRow, units: UnitPreferences): string {
  if (!row.limit) return "";
  const { comparison, value, unit, formula } = row.limit;
  const word = comparison === "<=" ? "at most" : "at least";
  // A formula that is only the number again says nothing.
  const how = Number.isFinite(Number(formula)) ? "" : ` (${formula})`;
  return `limit ${word} ${figure(value, null, unit, units)}${how}`;
}
