"use client";

import { useDeferredValue, useMemo, useState } from "react";
import { SetupFields } from "@/components/setup";
import { Panel } from "@/components/ui";
import { askedFields, askOfSetup, emptyPlanAsk, planQuery, setupOfAsk, type PlanAsk } from "@/lib/plan";
import { checkSetup, exampleSetups, type RunSetup } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import { ExtraFields } from "./extra-fields";
import { PlanAnswer } from "./plan-answer";
import { PlanBeside } from "./plan-beside";
import styles from "./plan.module.css";

/** The form and, beside or below it, what it leads to. Nothing is stored: the address holds what is asked. */
export function PlanDesk({
  start,
  units,
  onStart,
}: {
  start: PlanAsk;
  units: UnitPreferences;
  /** null for whoever may not make a bead. */
  onStart: ((query: string) => Promise<void>) | null;
}) {
  const [ask, setAsk] = useState(start);
  const change = (next: PlanAsk) => {
    setAsk(next);
    window.history.replaceState(null, "", `/plan?${planQuery(next)}`);
  };
  const setup = useMemo(() => setupOfAsk(ask), [ask]);
  const findings = useMemo(() => checkSetup(setup), [setup]);
  const asked = useDeferredValue(ask);
  const dialled = useMemo(() => withDials(asked, units), [asked, units]);
  const fromForm = (next: RunSetup) =>
    change({ ...askOfSetup(next), padWidthMm: ask.padWidthMm, grooveAngleDeg: ask.grooveAngleDeg });
  return (
    <div className={styles.desk}>
      <div className={styles.form}>
        <Panel title="What is to be run" tone="straw">
          <Examples onPick={(picked) => change({ ...emptyPlanAsk, ...askOfSetup(picked) })} />
          <SetupFields
            fields={askedFields}
            setup={setup}
            onChange={fromForm}
            units={units}
            findings={findings}
            label="What is to be run"
          >
            <ExtraFields ask={ask} units={units} onChange={change} />
          </SetupFields>
        </Panel>
        <a className={styles.jump} href="#plan">
          To the plan
        </a>
      </div>
      <div className={styles.answer} id="plan" tabIndex={-1}>
        <PlanAnswer ask={dialled} units={units} onStart={onStart} onTake={change} />
        <PlanBeside ask={dialled} units={units} onTake={change} />
      </div>
    </div>
  );
}

const withDials = (ask: PlanAsk, units: UnitPreferences): PlanAsk => ({
  ...ask,
  dials: units.length === "in" ? "inch" : "metric",
});

/** Somebody who begins picks a job that is near to theirs. */
function Examples({ onPick }: { onPick: (setup: RunSetup) => void }) {
  return (
    <label className={styles.examples}>
      Begin with something like
      <select
        value=""
        onChange={({ target: { value } }) => {
          const picked = exampleSetups.find(({ id }) => id === value);
          if (picked) onPick(picked.setup);
        }}
      >
        <option value="">Pick one, then change it</option>
        {exampleSetups.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}
