import type { UnitPreferences } from "@/lib/units";
import { fieldRow } from "./field-access";
import { quantityKinds, type QuantityKind } from "./quantity-kinds";
import type { ShowReading } from "./sentences";

/** Writes any numeric field of a set-up in the person's units. Tip distance and lengths keep no false decimals. */
export function showReading(units: UnitPreferences): ShowReading {
  return (field, value) => {
    const row = fieldRow(field);
    if (row.control !== "number") return String(value);
    const kind: QuantityKind = quantityKinds[row.quantity];
    return kind.show(value, units);
  };
}
