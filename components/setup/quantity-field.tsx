"use client";

import {
  fieldRow,
  parseReading,
  quantityOf,
  showReading,
  sourceDoubt,
  spanText,
  type NumberField,
} from "@/lib/setup";
import type { Band, WindowQuantity } from "@/lib/trade";
import { fieldText, inputText, otherUnits } from "@/lib/units";
import { FieldNotes } from "./field-notes";
import styles from "./fields.module.css";
import { controlId, findingsAt, notesId, useForm } from "./form-context";
import { useTyped } from "./use-typed";

/** A number with its unit: typed as one likes, shown in the other unit beside it, with the usual window below. */
export function QuantityField({ name, quick }: { name: NumberField; quick?: readonly number[] }) {
  const { prefix, setup, units, findings } = useForm();
  const { label, hint: howToRead } = fieldRow(name);
  const kind = quantityOf(name);
  const value = setup[name];
  const typed = useTypedQuantity(name);
  const id = controlId(prefix, name);
  const hint = useHint(name, howToRead);
  const described = [
    hint ? `${id}-hint` : null,
    typed.error ? `${id}-error` : null,
    findingsAt(findings, name).length > 0 ? notesId(prefix, name) : null,
  ];
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {label} <span className={styles.unit}>{kind.unit(units)}</span>
      </label>
      <div className={styles.typed}>
        <input
          id={id}
          type="text"
          inputMode={kind.unit(units) === "in" || name === "arcTimeS" ? "text" : "decimal"}
          autoComplete="off"
          placeholder="not known"
          value={typed.text}
          aria-invalid={typed.error !== null}
          aria-describedby={described.filter(Boolean).join(" ") || undefined}
          onChange={(event) => typed.type(event.target.value)}
          onBlur={typed.leave}
        />
        {typed.text !== "" && <DontKnow label={label} onClick={() => typed.type("")} />}
      </div>
      {quick && <QuickSizes name={name} sizes={quick} />}
      {value !== null && kind.twoUnits && (
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

/** The number as it is being typed, in the person's units. */
function useTypedQuantity(name: NumberField) {
  const { setup, set, units } = useForm();
  const kind = quantityOf(name);
  return useTyped({
    value: setup[name],
    unit: kind.unit(units),
    write: (stored) => fieldText(kind.input, stored, units),
    parse: (text) => parseReading(name, text, units),
    store: (stored) => set({ [name]: stored }),
  });
}

/** What stands under the field: how to read it, and the usual window unless a finding about it says so already. */
function useHint(name: NumberField, howToRead: string | undefined): string {
  const { units, findings, window } = useForm();
  const band = window && name in window ? window[name as WindowQuantity] : null;
  const said = findingsAt(findings, name).some(({ code }) => code.startsWith("reading-"));
  const usual = band && !said ? usualText(band, (n) => showReading(units)(name, n)) : null;
  return [howToRead, usual].filter(Boolean).join(" ");
}

function DontKnow({ label, onClick }: { label: string; onClick: () => void }) {
  return (
    <button type="button" className={styles.clear} aria-label={`Don’t know: ${label}`} onClick={onClick}>
      Don’t know
    </button>
  );
}

/** Sizes that are sold, one tap each; tapped again, unknown. */
function QuickSizes({ name, sizes }: { name: NumberField; sizes: readonly number[] }) {
  const { setup, set, units } = useForm();
  const { label } = fieldRow(name);
  return (
    <div className={styles.quick} role="group" aria-label={`Common sizes for ${label.toLowerCase()}`}>
      {sizes.map((size) => (
        <button
          key={size}
          type="button"
          aria-pressed={setup[name] === size}
          onClick={() => set({ [name]: setup[name] === size ? null : size })}
        >
          {inputText(quantityOf(name).input, size, units)}
        </button>
      ))}
    </div>
  );
}

/** "Usual 13 to 20 V (common practice, no published source)." */
function usualText(band: Band, show: (value: number) => string): string {
  const doubt = sourceDoubt(band.source);
  return `Usual ${spanText(show(band.low), show(band.high))}${doubt ? ` (${doubt})` : ""}.`;
}
