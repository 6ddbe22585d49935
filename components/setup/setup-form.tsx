"use client";

import { Fragment, useId, useMemo, type ReactNode } from "react";
import {
  formLines,
  setupParts,
  windowFor,
  type RunSetup,
  type SetupFinding,
  type SetupPart,
} from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import { isAsked } from "./asked";
import styles from "./fields.module.css";
import { FindingsSummary } from "./findings-summary";
import { Group, GroupNav } from "./group";
import { FormContext, useForm } from "./form-context";
import { Line } from "./line";
import { TimedSpeed } from "./timed-speed";
import { UsualOffers } from "./usual-offers";

export interface SetupFormProps {
  readonly setup: RunSetup;
  readonly onChange: (setup: RunSetup) => void;
  readonly units: UnitPreferences;
  readonly findings: readonly SetupFinding[];
}

/** How the bead was run. Everything may stay unknown; what the check finds stands at its field and on top. */
export function SetupForm({ setup, onChange, units, findings }: SetupFormProps) {
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
      <form className={styles.form} onSubmit={(event) => event.preventDefault()} aria-label="How it was run">
        <FindingsSummary />
        <GroupNav />
        {setupParts.map((part) => (
          <Part key={part} name={part} />
        ))}
      </form>
    </FormContext>
  );
}

/** What stands below a line of the form, by part and number of the line. */
const below: Readonly<Record<string, ReactNode>> = {
  "electrode 2": <UsualOffers />,
  "travel 3": <TimedSpeed />,
};

/** One part of the form: its lines as the table of fields has them, without the questions that make no sense here. */
function Part({ name }: { name: SetupPart }) {
  const { setup } = useForm();
  return (
    <Group name={name}>
      {formLines(name).map((line, at) => (
        <Fragment key={line[0]}>
          <Line fields={line.filter((field) => isAsked(field, setup))} />
          {below[`${name} ${at + 1}`]}
        </Fragment>
      ))}
    </Group>
  );
}
