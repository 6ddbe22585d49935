"use client";

import { useId, useMemo, type ReactNode } from "react";
import { fieldRow, windowFor, type RunSetup, type SetupField, type SetupFinding } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import { isAsked } from "./asked";
import styles from "./fields.module.css";
import { FormContext } from "./form-context";
import { Line } from "./line";

/** Some fields of a set-up, asked as the whole form asks them: for whoever needs no more to answer. */
export function SetupFields({
  fields,
  setup,
  onChange,
  units,
  findings,
  label,
  children,
}: {
  fields: readonly SetupField[];
  setup: RunSetup;
  onChange: (setup: RunSetup) => void;
  units: UnitPreferences;
  findings: readonly SetupFinding[];
  label: string;
  children?: ReactNode;
}) {
  const prefix = useId();
  const form = useMemo(
    () => ({
      prefix,
      setup,
      units,
      findings,
      window: windowFor(setup),
      set: (change: Partial<RunSetup>) => onChange({ ...setup, ...change }),
    }),
    [prefix, setup, units, findings, onChange],
  );
  return (
    <FormContext value={form}>
      <form className={styles.form} onSubmit={(event) => event.preventDefault()} aria-label={label}>
        <div className={styles.group}>
          {linesOf(fields.filter((field) => isAsked(field, setup))).map((line) => (
            <Line key={line[0]} fields={line} />
          ))}
          {children}
        </div>
      </form>
    </FormContext>
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
