"use client";

import { answersOf, fieldLabel, type ChoiceField as ChoiceName } from "@/lib/setup";
import { FieldNotes } from "./field-notes";
import styles from "./fields.module.css";
import { controlId, findingsAt, notesId, useForm } from "./form-context";

/** A long closed question: the phone's own picker, with "Don't know" on top. */
export function SelectField({ name }: { name: ChoiceName }) {
  const { prefix, setup, set, findings } = useForm();
  const options = answersOf(name);
  const index = options.findIndex(({ value }) => value === setup[name]);
  const id = controlId(prefix, name);
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {fieldLabel(name)}
      </label>
      <select
        id={id}
        className={index < 0 ? styles.selectUnknown : styles.select}
        value={index}
        aria-describedby={findingsAt(findings, name).length > 0 ? notesId(prefix, name) : undefined}
        onChange={(event) => set({ [name]: options[Number(event.target.value)]?.value ?? null })}
      >
        <option value={-1}>Don’t know</option>
        {options.map(({ value, label }, at) => (
          <option key={String(value)} value={at}>
            {label}
          </option>
        ))}
      </select>
      <FieldNotes field={name} />
    </div>
  );
}
