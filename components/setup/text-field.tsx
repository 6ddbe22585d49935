"use client";

import { fieldRow, type TextField as TextName } from "@/lib/setup";
import { FieldNotes } from "./field-notes";
import styles from "./fields.module.css";
import { controlId, useForm } from "./form-context";

/** Words as they stand on the machine; kept as typed. */
export function TextField({ name }: { name: TextName }) {
  const { prefix, setup, set } = useForm();
  const { label, hint } = fieldRow(name);
  const id = controlId(prefix, name);
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      <div className={styles.typed}>
        <input
          id={id}
          type="text"
          autoComplete="off"
          maxLength={40}
          placeholder="not known"
          value={setup[name] ?? ""}
          aria-describedby={`${id}-hint`}
          onChange={({ target: { value } }) => set({ [name]: value.trim() === "" ? null : value })}
        />
      </div>
      <p id={`${id}-hint`} className={styles.hint}>
        {hint}
      </p>
      <FieldNotes field={name} />
    </div>
  );
}
