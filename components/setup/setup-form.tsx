"use client";

import { useId, useMemo } from "react";
import { windowFor, type RunSetup, type SetupField, type SetupFinding } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import { isAsked } from "./asked";
import { ChoiceField } from "./choice-field";
import { ClassField } from "./class-field";
import styles from "./fields.module.css";
import { FindingsSummary } from "./findings-summary";
import { Group, GroupNav } from "./group";
import { FormContext, useForm } from "./form-context";
import { QuantityField } from "./quantity-field";
import { SelectField } from "./select-field";
import { TimedSpeed } from "./timed-speed";
import { UsualOffers } from "./usual-offers";

export interface SetupFormProps {
  readonly setup: RunSetup;
  readonly onChange: (setup: RunSetup) => void;
  readonly units: UnitPreferences;
  readonly findings: readonly SetupFinding[];
}

const WIRE_SIZES = [0.8, 0.9, 1.2, 1.6];
const ROD_SIZES = [2.4, 3.2, 4];

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
        <ElectrodeGroup />
        <MachineGroup />
        <TravelGroup />
        <JointGroup />
      </form>
    </FormContext>
  );
}

/** Whether a question makes sense for what is known already. */
function useAsks(): (field: SetupField) => boolean {
  const { setup } = useForm();
  return (field) => isAsked(field, setup);
}

function ElectrodeGroup() {
  const { setup } = useForm();
  const asks = useAsks();
  const rods = setup.process === "SMAW" || setup.process === "GTAW";
  return (
    <Group name="electrode">
      <ChoiceField name="process" />
      <div className={styles.grid}>
        <ClassField />
        <QuantityField name="electrodeDiameterMm" quick={rods ? ROD_SIZES : WIRE_SIZES} />
      </div>
      <UsualOffers />
      {asks("transfer") && <ChoiceField name="transfer" />}
      <div className={styles.grid}>
        <SelectField name="gas" />
        {asks("gasFlowLPerMin") && <QuantityField name="gasFlowLPerMin" />}
      </div>
    </Group>
  );
}

function MachineGroup() {
  const asks = useAsks();
  return (
    <Group name="machine">
      <ChoiceField name="polarity" />
      <div className={styles.grid}>
        {asks("wireFeedMPerMin") && <QuantityField name="wireFeedMPerMin" />}
        <QuantityField name="volts" />
        <QuantityField name="amps" />
      </div>
      <ChoiceField name="inputPower" />
    </Group>
  );
}

function TravelGroup() {
  const asks = useAsks();
  return (
    <Group name="travel">
      <ChoiceField name="travelDirection" />
      <div className={styles.grid}>
        {asks("ctwdMm") && <QuantityField name="ctwdMm" />}
        <QuantityField name="travelAngleDeg" />
        <QuantityField name="workAngleDeg" />
      </div>
      <div className={styles.grid}>
        <QuantityField name="travelSpeedMmPerMin" />
        <QuantityField name="weldLengthMm" />
        <QuantityField name="arcTimeS" />
      </div>
      <TimedSpeed />
    </Group>
  );
}

function JointGroup() {
  const asks = useAsks();
  return (
    <Group name="joint">
      <SelectField name="joint" />
      <ChoiceField name="position" />
      {asks("progression") && <ChoiceField name="progression" />}
      <ChoiceField name="baseMetal" />
      <div className={styles.grid}>
        <QuantityField name="thicknessMm" />
        <QuantityField name="fitUpGapMm" />
        {asks("targetLegMm") && <QuantityField name="targetLegMm" />}
        <QuantityField name="passCount" />
      </div>
      <ChoiceField name="surface" />
      <ChoiceField name="outdoors" />
    </Group>
  );
}
