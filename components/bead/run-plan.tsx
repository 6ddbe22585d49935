"use client";

import { ClipboardCheck } from "lucide-react";
import { Button } from "@/components/ui";
import { openOfPlan, ranAsPlanned } from "@/lib/assess";
import { fieldInText, valueInText, type RunSetup, type SetupField } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import type { BenchProps } from "./shared";
import styles from "./workbench.module.css";

/**
 * On top of a bead that was begun from a plan, a trial or a card: what was planned and nobody said yet. One press says that it
 * was run so; what was typed in already stays.
 */
export function RunPlan({ state, dispatch, units }: Pick<BenchProps, "state" | "dispatch" | "units">) {
  const { planned } = state.judgement;
  const open = openOfPlan(state.setup, planned);
  if (!planned || open.length === 0) return null;
  return (
    <aside className={styles.yours} aria-label="The plan" data-testid="run-plan">
      <p className={styles.planText}>
        Planned, and nobody said yet that it was run so: <b>{planText(planned, open, units)}</b>
      </p>
      <div className={styles.plan}>
        <Button onClick={() => dispatch({ type: "setup", setup: ranAsPlanned(state.setup, planned) })}>
          <ClipboardCheck size={20} aria-hidden="true" /> I ran it like this
        </Button>
        <Button onClick={() => dispatch({ type: "judgement", change: { planned: null } })}>
          Drop the plan
        </Button>
      </div>
    </aside>
  );
}

const planText = (planned: RunSetup, open: readonly SetupField[], units: UnitPreferences): string =>
  open.map((field) => `${fieldInText(field)} ${valueInText(field, planned[field]!, units)}`).join(", ");
