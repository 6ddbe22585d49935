"use client";

import { Panel } from "@/components/ui";
import { diagnoseSentences, type Check } from "@/lib/diagnose";
import { CausesPanel } from "./causes-panel";
import type { BenchProps } from "./shared";

/** Causes on the workbench: nothing to say yet, or the panel with its answers wired to the bead. */
export function CausesSection({
  state,
  dispatch,
  assessment,
  units,
  onGoMark,
}: BenchProps & { onGoMark: () => void }) {
  const { diagnosis } = assessment;
  const { answers, lookedFor } = state.judgement;
  const somethingSaid =
    state.setup.process !== null || state.photos.some((photo) => photo.history.present.marks.length > 0);
  if (!diagnosis.ok) {
    const [first] = diagnosis.issues;
    return (
      <Panel tone="bronze">
        {first ? diagnoseSentences[first.code](first.data) : "These records could not be weighed."}
      </Panel>
    );
  }
  if (!somethingSaid) {
    return (
      <Panel tone="straw" title="Nothing to weigh yet">
        <p>
          Mark what you see on the photo, or say how the bead was run. Causes appear with the first of either.
        </p>
      </Panel>
    );
  }

  /** A look that found nothing is a tick; one that found something is a mark, and marks are drawn on the photo. */
  function answer(check: Check, answerId: string) {
    if (check.imperfection === null) {
      return dispatch({ type: "judgement", change: { answers: { ...answers, [check.id]: answerId } } });
    }
    if (answerId !== "absent") return onGoMark();
    dispatch({ type: "judgement", change: { lookedFor: [...new Set([...lookedFor, check.imperfection])] } });
  }

  return (
    <CausesPanel
      diagnosis={diagnosis.value}
      answers={answers}
      units={units}
      onAnswer={answer}
      onForgetAnswers={() => dispatch({ type: "judgement", change: { answers: {} } })}
    />
  );
}
