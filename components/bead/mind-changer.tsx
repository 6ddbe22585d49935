"use client";

import { Panel } from "@/components/ui";
import { wouldChange, type DiagnoseInput, type Diagnosis } from "@/lib/diagnose";
import { useInIdle } from "./use-in-idle";

/** The one answer that would turn the first cause. It takes a diagnosis for every answer tried, so it comes last. */
export function MindChanger({ evidence, diagnosis }: { evidence: DiagnoseInput; diagnosis: Diagnosis }) {
  const found = useInIdle(diagnosis, true, () => wouldChange(evidence, diagnosis));
  if (!found) return null;
  const { check, answer, then } = found;
  const first = diagnosis.causes[0]?.name.toLowerCase() ?? "";
  return (
    <Panel tone="purple" title="What would change my mind">
      <p data-testid="would-change">
        {check.question} <strong>{answer.text}.</strong>{" "}
        {then === null
          ? `Then ${first} is less likely.`
          : `Then ${then.name.toLowerCase()} comes before ${first}.`}
      </p>
    </Panel>
  );
}
