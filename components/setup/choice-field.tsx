"use client";

import { answersOf, fieldRow, type ChoiceField as ChoiceName } from "@/lib/setup";
import { FieldNotes } from "./field-notes";
import styles from "./fields.module.css";
import { controlId, findingsAt, notesId, useForm } from "./form-context";

/** A short closed question: all answers in sight, one tap each, "Don't know" among them and first. */
export function ChoiceField({ name }: { name: ChoiceName }) {
  const { prefix, setup, set, findings } = useForm();
  const { label: question, hint } = fieldRow(name);
  const hintId = `${controlId(prefix, name)}-hint`;
  const described = [
    hint ? hintId : null,
    findingsAt(findings, name).length > 0 ? notesId(prefix, name) : null,
  ];
  const answers = [{ value: null, label: "Don’t know" }, ...answersOf(name)];
  return (
    <fieldset
      className={styles.field}
      id={controlId(prefix, name)}
      tabIndex={-1}
      aria-describedby={described.filter(Boolean).join(" ") || undefined}
    >
      <legend className={styles.label}>{question}</legend>
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
      {hint && (
        <p id={hintId} className={styles.hint}>
          {hint}
        </p>
      )}
      <FieldNotes field={name} />
    </fieldset>
  );
}
