"use client";

import type { ChoiceName, ChoiceSpec } from "./choices";
import { choices } from "./choices";
import { FieldNotes } from "./field-notes";
import styles from "./fields.module.css";
import { controlId, findingsAt, notesId, useForm } from "./form-context";

/** A short closed question: all answers in sight, one tap each, "Don't know" among them and first. */
export function ChoiceField({ name }: { name: ChoiceName }) {
  const { prefix, setup, set, findings } = useForm();
  const spec = choices[name] as ChoiceSpec<string | boolean>;
  const hintId = `${controlId(prefix, name)}-hint`;
  const described = [
    spec.hint ? hintId : null,
    findingsAt(findings, name).length > 0 ? notesId(prefix, name) : null,
  ];
  const answers = [{ value: null, label: "Don’t know" }, ...spec.options];
  return (
    <fieldset
      className={styles.field}
      id={controlId(prefix, name)}
      tabIndex={-1}
      aria-describedby={described.filter(Boolean).join(" ") || undefined}
    >
      <legend className={styles.label}>{spec.label}</legend>
      <div className={styles.segments}>
        {answers.map(({ value, label }) => (
          <label key={String(value)} className={value === null ? styles.unknown : styles.segment}>
            <input
              type="radio"
              name={controlId(prefix, name)}
              checked={setup[name] === value}
              onChange={() => set({ [name]: value })}
            />
            <span>{label}</span>
          </label>
        ))}
      </div>
      {spec.hint && (
        <p id={hintId} className={styles.hint}>
          {spec.hint}
        </p>
      )}
      <FieldNotes field={name} />
    </fieldset>
  );
}
