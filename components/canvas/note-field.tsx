"use client";

import { useId } from "react";
import { useTypedText } from "@/components/ui";
import styles from "./mark-card.module.css";

const LONGEST = 500;

export function NoteField({
  note,
  onNote,
  readOnly,
}: {
  note: string;
  onNote: (note: string) => void;
  readOnly: boolean;
}) {
  const id = useId();
  const typed = useTypedText(note, onNote);
  return (
    <div className={styles.choice}>
      <label htmlFor={id} className={styles.label}>
        Note
      </label>
      <textarea
        id={id}
        rows={2}
        maxLength={LONGEST}
        value={typed.value}
        readOnly={readOnly}
        placeholder="What else is there to see?"
        onChange={(event) => typed.onChange(event.target.value)}
        onBlur={typed.onBlur}
      />
    </div>
  );
}
