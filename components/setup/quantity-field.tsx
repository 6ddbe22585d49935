"use client";

import { showReading, sourceDoubt, spanText } from "@/lib/setup";
import type { Band, WindowQuantity } from "@/lib/trade";
import { inputText, otherUnits } from "@/lib/units";
import { FieldNotes } from "./field-notes";
import styles from "./fields.module.css";
import { controlId, findingsAt, notesId, useForm } from "./form-context";
import { quantities, type QuantityName } from "./quantities";
import { useTyped } from "./use-typed";

/** A number with its unit: typed as one likes, shown in the other unit beside it, with the usual window below. */
export function QuantityField({ name, quick }: { name: QuantityName; quick?: readonly number[] }) {
  const { prefix, setup, set, units, findings, window } = useForm();
  const spec = quantities[name];
  const value = setup[name];
  const typed = useTyped({
    value,
    unit: spec.unit(units),
    write: (stored) => inputText(spec.input, stored, units),
    parse: (text) => spec.parse(text, units),
    store: (stored) => set({ [name]: stored }),
  });
  const id = controlId(prefix, name);
  const here = findingsAt(findings, name);
  const band = window && name in window ? window[name as WindowQuantity] : null;
  // A finding about the window already says it.
  const said = here.some(({ code }) => code.startsWith("reading-"));
  const usual = band && !said ? usualText(band, (n) => showReading(units)(name, n)) : null;
  const hint = [spec.hint, usual].filter(Boolean).join(" ");
  const described = [
    hint ? `${id}-hint` : null,
    typed.error ? `${id}-error` : null,
    here.length > 0 ? notesId(prefix, name) : null,
  ];
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {spec.label} <span className={styles.unit}>{spec.unit(units)}</span>
      </label>
      <div className={styles.typed}>
        <input
          id={id}
          type="text"
          inputMode={spec.unit(units) === "in" || name === "arcTimeS" ? "text" : "decimal"}
          autoComplete="off"
          placeholder="not known"
          value={typed.text}
          aria-invalid={typed.error !== null}
          aria-describedby={described.filter(Boolean).join(" ") || undefined}
          onChange={(event) => typed.type(event.target.value)}
          onBlur={typed.leave}
        />
        {typed.text !== "" && (
          <button
            type="button"
            className={styles.clear}
            aria-label={`Don’t know: ${spec.label}`}
            onClick={() => typed.type("")}
          >
            Don’t know
          </button>
        )}
      </div>
      {quick && (
        <div
          className={styles.quick}
          role="group"
          aria-label={`Common sizes for ${spec.label.toLowerCase()}`}
        >
          {quick.map((size) => (
            <button
              key={size}
              type="button"
              aria-pressed={value === size}
              onClick={() => set({ [name]: value === size ? null : size })}
            >
              {inputText(spec.input, size, units)}
            </button>
          ))}
        </div>
      )}
      {value !== null && spec.twoUnits && (
        <p className={styles.other}>= {showReading(otherUnits(units))(name, value)}</p>
      )}
      {hint && (
        <p id={`${id}-hint`} className={styles.hint}>
          {hint}
        </p>
      )}
      {typed.error && (
        <p id={`${id}-error`} className={styles.error} role="alert">
          {typed.error}
        </p>
      )}
      <FieldNotes field={name} />
    </div>
  );
}

/** "Usual 13 to 20 V (common practice, no published source)." */
function usualText(band: Band, show: (value: number) => string): string {
  const doubt = sourceDoubt(band.source);
  return `Usual ${spanText(show(band.low), show(band.high))}${doubt ? ` (${doubt})` : ""}.`;
}
