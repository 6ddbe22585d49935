"use client";

import { Field } from "@/components/ui";
import { fieldLabel, parseReading, quantityOf, type NumberField } from "@/lib/setup";
import { fieldText, type UnitPreferences } from "@/lib/units";
import { useTyped } from "./use-typed";
import styles from "./fields.module.css";

interface Range {
  readonly low: number | null;
  readonly high: number | null;
}

/** Both ends of one dial, typed in the person's units; a half-typed end is not known. */
export function RangeFields({
  field,
  range,
  units,
  hint,
  onChange,
}: {
  field: NumberField;
  range: Range;
  units: UnitPreferences;
  hint?: string;
  onChange: (range: Range) => void;
}) {
  const end = (which: "low" | "high") => ({
    name: `${fieldLabel(field)}, ${which === "low" ? "from" : "to"} (${quantityOf(field).unit(units)})`,
    value: range[which],
    store: (value: number | null) => onChange({ ...range, [which]: value }),
  });
  return (
    <div className={styles.grid}>
      <End field={field} units={units} {...end("low")} hint={hint} />
      <End field={field} units={units} {...end("high")} />
    </div>
  );
}

function End({
  field,
  units,
  name,
  value,
  hint,
  store,
}: {
  field: NumberField;
  units: UnitPreferences;
  name: string;
  value: number | null;
  hint?: string | undefined;
  store: (value: number | null) => void;
}) {
  const kind = quantityOf(field);
  const typed = useTyped({
    value,
    unit: kind.unit(units),
    write: (stored) => fieldText(kind.input, stored, units),
    parse: (text) => parseReading(field, text, units),
    store,
  });
  return (
    <Field label={name} hint={hint} error={typed.error}>
      {(ids) => (
        <input
          {...ids}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={typed.text}
          onChange={({ target }) => typed.type(target.value)}
          onBlur={typed.leave}
        />
      )}
    </Field>
  );
}
