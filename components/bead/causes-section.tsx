"use client";

import { Panel } from "@/components/ui";
import { CausesPanel } from "./causes-panel";
import type { BenchProps } from "./shared";

/** Causes on the workbench: nothing to say yet, or the panel with its answers wired to the bead. */
export function CausesSection({ state, dispatch, assessment, units }: BenchProps) {
  const { diagnosis } = assessment;
  const { answers } = state.judgement;
  const somethingSaid =
    state.setup.process !== null || state.photos.some((photo) => photo.history.present.marks.length > 0);
  if (!diagnosis.ok)
    return <Panel tone="bronze">These records could not be weighed: {diagnosis.issues[0]?.code}.</Panel>;
  if (!somethingSaid) {
    return (
      <Panel tone="straw" title="Nothing to weigh yet">
        <p>
          Mark what you see on the photo, or say how the bead was run. Causes appear with the first of either.
        </p>
      </Panel>
    );
  }
  return (
    <CausesPanel
      diagnosis={diagnosis.value}
      answers={answers}
      units={units}
      onAnswer={(check, answer) => {
        const { [check]: _gone, ...rest } = answers;
        dispatch({
          type: "judgement",
          change: { answers: answer === null ? rest : { ...rest, [check]: answer } },
        });
      }}
    />
  );
}
