"use client";

import { useId, useMemo, type ReactNode } from "react";
import { windowFor, type RunSetup, type SetupFinding } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import { FormContext } from "./form-context";
import styles from "./fields.module.css";

export interface SetupFormProps {
  readonly setup: RunSetup;
  readonly onChange: (setup: RunSetup) => void;
  readonly units: UnitPreferences;
  readonly findings: readonly SetupFinding[];
}

/** A form over a set-up: every field in it reads and changes the one that is given here. */
export function FormFrame({
  setup,
  onChange,
  units,
  findings,
  label,
  children,
}: SetupFormProps & { readonly label: string; readonly children: ReactNode }) {
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
        {children}
      </form>
    </FormContext>
  );
}
