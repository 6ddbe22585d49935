"use client";

import { useTyped } from "@/components/setup";
import { Field } from "@/components/ui";
import { fieldText, parseLength, type UnitPreferences } from "@/lib/units";

/** A length in the person's unit, or in any they type; empty is "not known", and what cannot be read says why. */
export function LengthField({
  label,
  hint,
  valueMm,
  units,
  onValue,
}: {
  label: string;
  hint?: string;
  valueMm: number | null;
  units: UnitPreferences;
  onValue: (valueMm: number | null) => void;
}) {
  const typed = useTyped({
    value: valueMm,
    unit: units.length,
    write: (value) => fieldText("length", value, units),
    parse: (text) => parseLength(text, { default: units.length }),
    store: onValue,
  });
  return (
    <Field label={`${label} (${units.length})`} hint={hint} error={typed.error}>
      {(ids) => (
        <input
          {...ids}
          value={typed.text}
          autoComplete="off"
          placeholder="not known"
          onChange={(event) => typed.type(event.target.value)}
          onBlur={typed.leave}
        />
      )}
    </Field>
  );
}
