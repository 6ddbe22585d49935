"use client";

import { RotateCw } from "lucide-react";
import Link from "next/link";
import { useTransition } from "react";
import { AnswerCard } from "@/components/report";
import type { SeriesNote } from "@/components/trials";
import { Button, Panel } from "@/components/ui";
import type { AnswerKind, Proposal } from "@/lib/assess";
import type { Change, Check, DiagnoseInput, Diagnosis } from "@/lib/diagnose";
import { answerWords, changeText, reasonLine } from "@/lib/report";
import { checkSetup } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import styles from "./causes-panel.module.css";
import { CheckQuestion } from "./check-question";
import { useInIdle } from "./use-in-idle";

export interface AnswerProps {
  readonly kind: AnswerKind;
  readonly diagnosis: Diagnosis;
  /** What the diagnosis was made from. */
  readonly evidence: DiagnoseInput;
  /** null: nothing here needs a change, or an inspector comes first. */
  readonly proposed: Proposal | null;
  readonly units: UnitPreferences;
  readonly onAnswer: (check: Check, answerId: string) => void;
  readonly onRunAgain: (change: Change) => Promise<void>;
  readonly inTrial: SeriesNote["trial"];
}

/** What there is to say first: an inspector, the one change, the two questions that settle most, or nothing. */
export function AnswerPanel(props: AnswerProps) {
  const { kind, diagnosis, proposed } = props;
  switch (kind) {
    case "inspector":
      return <InspectorFirst {...props} />;
    case "change":
      if (props.inTrial && !isUnsound(props.evidence)) return <NextPoint {...props} trial={props.inTrial} />;
      return proposed && <ChangeAnswer {...props} proposed={proposed} />;
    case "ask":
      return <Settling diagnosis={diagnosis} onAnswer={props.onAnswer} />;
    case "nothing":
      return (
        <Panel tone="ok" title="Nothing to change">
          <p>
            {diagnosis.causeless.length > 0 ? "Nothing else is marked" : "Nothing is marked"} and the set-up
            points at no fault.
          </p>
        </Panel>
      );
    case "unlooked":
      return (
        <Panel tone="straw" title="Not looked at yet">
          <p>
            Nothing is marked and nothing is ticked as looked for, so there is nothing to say of the bead.
          </p>
        </Panel>
      );
  }
}

/** The record itself says that something is plainly wrong: it is mended first, in a series too, which would show nothing. */
const isUnsound = ({ setup }: DiagnoseInput): boolean =>
  checkSetup(setup).some(({ severity }) => severity === "stop");

function InspectorFirst({ diagnosis, units }: AnswerProps) {
  const stops = diagnosis.cautions.filter(({ level }) => level === "stop");
  return (
    <section data-testid="inspector-first">
      <Panel tone="danger" title="A qualified inspector first">
        {stops.map((caution) => (
          <p key={caution.code}>{reasonLine(caution, units)}</p>
        ))}
        <p>
          <strong>No change is proposed before that.</strong>
        </p>
      </Panel>
    </section>
  );
}

/** In a series one thing is varied on purpose: its next point is the change, and the bead's own has to wait. */
function NextPoint({ trial, ...props }: AnswerProps & { readonly trial: NonNullable<SeriesNote["trial"]> }) {
  const { proposed } = props;
  return (
    <section data-testid="next-point" className={styles.settling}>
      <h3>The next point of the trial</h3>
      <p>
        <strong>{trial.next}</strong> <Link href={`/trials/${trial.id}`}>{trial.title}</Link>
      </p>
      {proposed && (
        <details className={styles.rest}>
          <summary>What this bead by itself would want</summary>
          <p>Not while the trial runs: two things changed at once show neither.</p>
          <ChangeAnswer {...props} proposed={proposed} />
        </details>
      )}
    </section>
  );
}

function ChangeAnswer({
  diagnosis,
  evidence,
  proposed: { first, next },
  units,
  onRunAgain,
}: AnswerProps & { readonly proposed: Proposal }) {
  const [pending, start] = useTransition();
  return (
    <>
      <AnswerCard answer={answerWords({ evidence, diagnosis }, first, units)} look="screen">
        <Button size="large" disabled={pending} onClick={() => start(() => onRunAgain(first))}>
          <RotateCw size={22} aria-hidden="true" /> Run it again
        </Button>
      </AnswerCard>
      <details className={styles.rest}>
        <summary>Why this far{next.length > 0 && ", and what if it does not cure it"}</summary>
        <p>{reasonLine(first.reason, units)}</p>
        {next.length > 0 && (
          <>
            <p>Only if that does not cure it:</p>
            <ol>
              {next.slice(0, 3).map((change) => (
                <li key={`${change.causeId} ${change.quantity}`}>
                  {change.sentence} <strong>{changeText(change, units)}</strong>
                </li>
              ))}
            </ol>
          </>
        )}
      </details>
    </>
  );
}

/** Where no change stands out, two questions take its place; they follow the causes as all checks do. */
function Settling({ diagnosis, onAnswer }: Pick<AnswerProps, "diagnosis" | "onAnswer">) {
  const asked = useInIdle(diagnosis, true, () => diagnosis.settling, true);
  return (
    <section className={styles.settling} data-testid="settling" aria-busy={asked === null}>
      <h3>No change stands out yet</h3>
      <p>
        {asked?.length === 0
          ? "Mark what else you see, or say more of how it was run."
          : "Answer what you can: this would settle most."}
      </p>
      {asked?.map((check) => (
        <CheckQuestion key={check.id} check={check} onAnswer={(answerId) => onAnswer(check, answerId)} />
      ))}
    </section>
  );
}
