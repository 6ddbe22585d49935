import type { VerdictRow } from "@/lib/accept";

/** Writes a length in the person's units, with its uncertainty when there is one. */
export type LengthText = (mm: number, expandedUncertainty?: number) => string;

function figure(value: number, u: number | null, unit: string, lengthText: LengthText): string {
  if (unit === "mm") return u ? lengthText(value, u) : lengthText(value);
  const digits = unit === "count" ? 0 : unit === "ratio" ? 2 : 1;
  const suffix = unit === "mm2" ? " mm²" : unit === "deg" ? "°" : "";
  const spread = u ? ` ± ${u.toFixed(digits)}` : "";
  return `${value.toFixed(digits)}${spread}${suffix}`;
}

export function rowValueText(row: VerdictRow, lengthText: LengthText): string {
  if (row.value === null) return "";
  return `read ${figure(row.value, row.expandedUncertainty, row.limit?.unit ?? "mm", lengthText)}`;
}

export function rowLimitText(row: VerdictRow, lengthText: LengthText): string {
  if (!row.limit) return "";
  const { comparison, value, unit, formula } = row.limit;
  const word = comparison === "<=" ? "at most" : "at least";
  return `limit ${word} ${figure(value, null, unit, lengthText)} (${formula})`;
}
