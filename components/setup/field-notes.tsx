"use client";

import type { SetupField } from "@/lib/setup";
import { FindingLine } from "./finding-line";
import styles from "./findings.module.css";
import { findingsAt, notesId, useForm } from "./form-context";

/** The findings that stand at one field, under its control. Empty list when there are none, so the id always exists. */
export function FieldNotes({ field }: { field: SetupField }) {
  const { prefix, findings, units } = useForm();
  const here = findingsAt(findings, field);
  return (
    <ul id={notesId(prefix, field)} className={styles.notes} hidden={here.length === 0}>
      {here.map((found) => (
        <li key={found.code + found.severity}>
          <FindingLine found={found} units={units} />
        </li>
      ))}
    </ul>
  );
}
