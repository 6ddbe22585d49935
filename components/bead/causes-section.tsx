"use client";

import Link from "next/link";
import { Panel, buttonClass } from "@/components/ui";
import { diagnoseSentences, type Check, type ShopCounts } from "@/lib/diagnose";
import { applyChange, proposal, type TriedChange } from "@/lib/assess";
import { changeText, settableChange } from "@/lib/report";
import type { RunSetup } from "@/lib/setup";
import { CausesPanel } from "./causes-panel";
import type { BenchProps } from "./shared";
import { ShopPanel } from "./shop-panel";
import { TriedPanel } from "./tried-panel";

/** Causes on the workbench: nothing to say yet, or the panel with its answers wired to the bead. */
export function CausesSection({
  beadId,
  state,
  dispatch,
  assessment,
  units,
  previous,
  shop,
  onGoMark,
  onRunAgain,
}: BenchProps & {
  previous: { readonly id: string; readonly number: number; readonly title: string } | null;
  shop: { readonly counts: ShopCounts; readonly onReset: () => Promise<void> };
  onGoMark: () => void;
  onRunAgain: (tried: TriedChange, setup: RunSetup) => Promise<void>;
}) {
  const { diagnosis } = assessment;
  const { answers, lookedFor } = state.judgement;
  const marks = state.photos.reduce((sum, photo) => sum + photo.history.present.marks.length, 0);
  const somethingSaid = state.setup.process !== null || marks > 0;
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

  const { tried, outcome } = state.judgement;
  return (
    <div style={{ display: "grid", gap: "var(--space-4)" }}>
      {previous && tried && (
        <TriedPanel
          previous={previous}
          tried={tried}
          outcome={outcome}
          onOutcome={(next) => dispatch({ type: "judgement", change: { outcome: next } })}
        />
      )}
      {previous && tried && (
        <Link className={buttonClass("plain")} href={`/beads/${beadId}/compare`}>
          Side by side with bead {previous.number}
        </Link>
      )}
      <CausesPanel
        diagnosis={diagnosis.value}
        proposed={proposal(diagnosis.value)}
        lookedAt={lookedFor.length > 0 || marks > 0}
        answers={answers}
        units={units}
        onAnswer={answer}
        onForgetAnswers={() => dispatch({ type: "judgement", change: { answers: {} } })}
        onRunAgain={(change) =>
          onRunAgain(
            { causeId: change.causeId, sentence: change.sentence, step: changeText(change, units) },
            applyChange(state.setup, settableChange(change, units)),
          )
        }
      />
      <Link className={buttonClass("plain")} href={`/beads/${beadId}/card`}>
        Bench card: the change and the settings, large
      </Link>
      <ShopPanel shop={shop} />
    </div>
  );
}
