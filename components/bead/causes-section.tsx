"use client";

import Link from "next/link";
import { Panel, buttonClass } from "@/components/ui";
import { diagnoseSentences, type Check, type Diagnosis, type ShopCounts } from "@/lib/diagnose";
import { applyChange, proposal, type TriedChange } from "@/lib/assess";
import { changeText, settableChange } from "@/lib/report";
import type { RunSetup } from "@/lib/setup";
import { CausesPanel } from "./causes-panel";
import type { BenchProps } from "./shared";
import { ShopPanel } from "./shop-panel";
import { TriedPanel } from "./tried-panel";

interface CausesProps extends BenchProps {
  readonly previous: { readonly id: string; readonly number: number; readonly title: string } | null;
  readonly shop: { readonly counts: ShopCounts; readonly onReset: () => Promise<void> };
  readonly onGoMark: () => void;
  readonly onRunAgain: (tried: TriedChange, setup: RunSetup) => Promise<void>;
}

const markCount = ({ photos }: BenchProps["state"]): number =>
  photos.reduce((sum, photo) => sum + photo.history.present.marks.length, 0);

/** Causes on the workbench: nothing to say yet, or the panel with its answers wired to the bead. */
export function CausesSection(props: CausesProps) {
  const { beadId, state, assessment, shop } = props;
  const { diagnosis } = assessment;
  if (!diagnosis.ok) {
    const [first] = diagnosis.issues;
    return (
      <Panel tone="bronze">
        {first ? diagnoseSentences[first.code](first.data) : "These records could not be weighed."}
      </Panel>
    );
  }
  if (state.setup.process === null && markCount(state) === 0) {
    return (
      <Panel tone="straw" title="Nothing to weigh yet">
        <p>
          Mark what you see on the photo, or say how the bead was run. Causes appear with the first of either.
        </p>
      </Panel>
    );
  }
  return (
    <div style={{ display: "grid", gap: "var(--space-4)" }}>
      <WeighedCauses {...props} diagnosis={diagnosis.value} />
      <Tried {...props} />
      <Link className={buttonClass("plain")} href={`/beads/${beadId}/card`}>
        Bench card: the change and the settings, large
      </Link>
      <ShopPanel shop={shop} />
    </div>
  );
}

/** What was changed since the bead before, and what it did. */
function Tried({ beadId, state, dispatch, previous }: CausesProps) {
  const { tried, outcome } = state.judgement;
  if (!previous || !tried) return null;
  return (
    <>
      <TriedPanel
        previous={previous}
        tried={tried}
        outcome={outcome}
        onOutcome={(next) => dispatch({ type: "judgement", change: { outcome: next } })}
      />
      <Link className={buttonClass("plain")} href={`/beads/${beadId}/compare`}>
        Side by side with bead {previous.number}
      </Link>
    </>
  );
}

function WeighedCauses({
  state,
  dispatch,
  units,
  assessment,
  diagnosis,
  onGoMark,
  onRunAgain,
  inTrial,
}: CausesProps & { diagnosis: Diagnosis }) {
  const { answers, lookedFor } = state.judgement;
  /** A look that found nothing is a tick; one that found something is a mark, and marks are drawn on the photo. */
  const answer = (check: Check, answerId: string) => {
    if (check.imperfection === null)
      return dispatch({ type: "judgement", change: { answers: { ...answers, [check.id]: answerId } } });
    if (answerId !== "absent") return onGoMark();
    dispatch({ type: "judgement", change: { lookedFor: [...new Set([...lookedFor, check.imperfection])] } });
  };
  const forget = (id: string) => {
    const { [id]: _taken, ...rest } = answers;
    dispatch({ type: "judgement", change: { answers: rest } });
  };
  return (
    <CausesPanel
      {...{ diagnosis, answers, units, inTrial }}
      kind={assessment.answer}
      evidence={assessment.evidence}
      proposed={proposal(diagnosis)}
      process={state.setup.process}
      onProcess={(process) => dispatch({ type: "setup", setup: { ...state.setup, process } })}
      onAnswer={answer}
      onForget={forget}
      onRunAgain={(change) =>
        onRunAgain(
          { causeId: change.causeId, sentence: change.sentence, step: changeText(change, units) },
          applyChange(state.setup, settableChange(change, units)),
        )
      }
    />
  );
}
