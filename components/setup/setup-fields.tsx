"use client";

import type { ReactNode } from "react";
import { fieldRow, type SetupField } from "@/lib/setup";
import { isAsked } from "./asked";
import styles from "./fields.module.css";
import { FormFrame, type SetupFormProps } from "./form-frame";
import { Line } from "./line";

/** Some fields of a set-up, asked as the whole form asks them: for whoever needs no more to answer. */
export function SetupFields({
  fields,
  children,
  ...form
}: SetupFormProps & {
  readonly fields: readonly SetupField[];
  readonly label: string;
  readonly children?: ReactNode;
}) {
  return (
    <FormFrame {...form}>
      <div className={styles.group}>
        {linesOf(fields.filter((field) => isAsked(field, form.setup))).map((line) => (
          <Line key={line[0]} fields={line} />
        ))}
        {children}
      </div>
    </FormFrame>
  );
}

/** Keys stand alone, neighbours that are typed or picked share a line. */
function linesOf(fields: readonly SetupField[]): readonly (readonly SetupField[])[] {
  const lines: SetupField[][] = [];
  for (const field of fields) {
    const keys = fieldRow(field).control === "keys";
    const last = lines.at(-1);
    if (keys || last === undefined || fieldRow(last[0]!).control === "keys") lines.push([field]);
    else last.push(field);
  }
  return lines;
}
