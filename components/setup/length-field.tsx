"use client";

import { Field } from "@/components/ui";
import { lengthText } from "@/lib/report";
import { fieldText, otherUnits, parseLength, type UnitPreferences } from "@/lib/units";
import { useTyped } from "./use-typed";

/** A length typed in the person's unit, or in any they name, and kept in mm; empty is null. What it is in the other unit stands beneath. */
export function LengthField({
  label,
  hint,
  value,
  units,
  error,
  placeholder,
  allowZero = false,
  onChange,
}: {
  readonly label: string;
  readonly hint?: string;
  readonly value: number | null;
  readonly units: UnitPreferences;
  readonly error?: string | undefined;
  readonly placeholder?: string;
  readonly allowZero?: boolean;
  readonly onChange: (mm: number | null) => void;
}) {
  const typed = useTyped({
    value,
    unit: units.length,
    write: (stored) => fieldText("length", stored, units),
    parse: (text) => parseLength(text, { default: units.length, allowZero }),
    store: onChange,
  });
  const other = value === null ? null : `= ${lengthText(value, otherUnits(units))}`;
  return (
    <Field
      label={`${label}, ${units.length}`}
      hint={[hint, other].filter(Boolean).join(" ")}
      error={typed.error ?? error}
    >
      {(ids) => (
        <input
          {...ids}
          type="text"
          inputMode={units.length === "in" ? "text" : "decimal"}
          autoComplete="off"
          placeholder={placeholder}
          value={typed.text}
          onChange={(event) => typed.type(event.target.value)}
          onBlur={typed.leave}
        />
      )}
    </Field>
  );
}
