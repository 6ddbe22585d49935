"use client";

import { RotateCw, ShieldAlert } from "lucide-react";
import { useTransition } from "react";
import { Button, Panel } from "@/components/ui";
import { needsCheck } from "@/lib/base";
import type { Change, Check, Diagnosis, Statement } from "@/lib/diagnose";
import type { Proposal } from "@/lib/assess";
import { amountText, changeText, confidenceWords } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";
import { CausesList } from "./causes-list";
import styles from "./causes-panel.module.css";
import { useInIdle } from "./use-in-idle";

export interface CausesPanelProps {
  readonly diagnosis: Diagnosis;
  /** null: nothing here needs a change, or an inspector comes first. */
  readonly proposed: Proposal | null;
  /** Something is marked, or ticked as looked for and absent: only then is "nothing" an answer. */
  readonly lookedAt: boolean;
  readonly answers: Readonly<Record<string, string>>;
  readonly units: UnitPreferences;
  readonly onAnswer: (check: Check, answerId: string) => void;
  readonly onForgetAnswers: () => void;
  readonly onRunAgain: (change: Change) => Promise<void>;
}

/** From the one change to try down to what it all rests on. */
export function CausesPanel({
  diagnosis,
  proposed,
  lookedAt,
  answers,
  units,
  onAnswer,
  onForgetAnswers,
  onRunAgain,
}: CausesPanelProps) {
  const { causes, causeless, contradictions, cautions } = diagnosis;
  const stops = cautions.filter((caution) => caution.level === "stop");
  return (
    <div className={styles.stack}>
      {stops.map((caution) => (
        <Panel key={caution.code} tone="danger" title="A qualified inspector first">
          <Said statement={caution} units={units} />
        </Panel>
      ))}
      {contradictions.map((one) => (
        <Panel key={`${one.code} ${one.fields.join()}`} tone="danger" title="The record contradicts itself">
          <Said statement={one} units={units} />
        </Panel>
      ))}
      {proposed && (
        <FirstChange change={proposed.first} rest={proposed.next} units={units} onRunAgain={onRunAgain} />
      )}
      {causeless.length > 0 && (
        <Panel tone="bronze" title="Not from how it was run">
          {causeless.map((one) => (
            <Said key={one.imperfection} statement={one} units={units} />
          ))}
        </Panel>
      )}
      {!proposed && stops.length === 0 && !lookedAt && (
        <Panel tone="straw" title="Not looked at yet">
          <p>
            Nothing is marked and nothing is ticked as looked for, so there is nothing to say of the bead. The
            list below only says how common each cause is.
          </p>
        </Panel>
      )}
      {!proposed && stops.length === 0 && lookedAt && (
        <Panel tone="ok" title="Nothing to change">
          <p>
            {causeless.length > 0 ? "Nothing else is marked" : "Nothing is marked"} and the set-up points at
            no fault. The list below only says how common each cause is.
          </p>
        </Panel>
      )}
      {causes.length > 0 && <CausesList causes={causes} units={units} />}
      <Checks diagnosis={diagnosis} answers={answers} onAnswer={onAnswer} />
      {Object.keys(answers).length > 0 && (
        <Button onClick={onForgetAnswers}>
          Take back{" "}
          {Object.keys(answers).length === 1 ? "the answer" : `all ${Object.keys(answers).length} answers`}
        </Button>
      )}
      {cautions.filter((caution) => caution.level !== "stop").length > 0 && (
        <Panel
          tone="straw"
          title={
            <>
              <ShieldAlert size={22} aria-hidden="true" /> Cautions and limits
            </>
          }
        >
          {cautions
            .filter((caution) => caution.level !== "stop")
            .map((caution) => (
              <Said key={caution.code} statement={caution} units={units} />
            ))}
        </Panel>
      )}
    </div>
  );
}

function Said({ statement, units }: { statement: Statement; units: UnitPreferences }) {
  return (
    <p>
      {statement.sentence}
      {statement.amounts.length > 0 && (
        <span className={styles.amounts}>
          {" "}
          {statement.amounts.map((amount) => amountText(amount, units)).join(", ")}
        </span>
      )}
      {needsCheck(statement.source) && (
        <span className={styles.confidence}> {confidenceWords[statement.source.confidence]}</span>
      )}
    </p>
  );
}

function FirstChange({
  change,
  rest,
  units,
  onRunAgain,
}: {
  change: Change;
  rest: readonly Change[];
  units: UnitPreferences;
  onRunAgain: CausesPanelProps["onRunAgain"];
}) {
  const [pending, start] = useTransition();
  return (
    <section className={styles.first} data-testid="first-change">
      <h3>Change this one thing</h3>
      <p className={styles.sentence}>{change.sentence}</p>
      <p className={styles.step}>{changeText(change, units)}</p>
      <Said statement={change.reason} units={units} />
      {change.effects.length > 0 && (
        <p className={styles.effects}>
          Then, by the models: {change.effects.map((amount) => amountText(amount, units)).join(", ")}
        </p>
      )}
      <Button size="large" disabled={pending} onClick={() => start(() => onRunAgain(change))}>
        <RotateCw size={22} aria-hidden="true" /> Run it again with this change
      </Button>
      {rest.length > 0 && (
        <details>
          <summary>Only if that does not cure it</summary>
          <ol>
            {rest.slice(0, 4).map((next) => (
              <li key={`${next.causeId} ${next.quantity}`}>
                {next.sentence} <strong>{changeText(next, units)}</strong>
              </li>
            ))}
          </ol>
        </details>
      )}
    </section>
  );
}

/** What to check next takes an inference for every answer: it follows the causes, the old list stands until then. */
function Checks({
  diagnosis,
  answers,
  onAnswer,
}: {
  diagnosis: Diagnosis;
  answers: Readonly<Record<string, string>>;
  onAnswer: CausesPanelProps["onAnswer"];
}) {
  const checks = useInIdle(diagnosis, true, () => diagnosis.checks, true);
  if (checks?.length === 0) return null;
  return (
    <section className={styles.checks} aria-busy={checks === null}>
      <h3>Check next</h3>
      <p className={styles.small}>
        In the order that tells most for the effort. Each answer changes the causes above.
      </p>
      <ol>
        {(checks ?? []).slice(0, 4).map((check) => (
          <li key={check.id} className={styles.check} data-check={check.id}>
            <p className={styles.question}>{check.question}</p>
            <p className={styles.small}>{check.how}</p>
            <div className={styles.answers}>
              {check.answers.map((answer) => (
                <Button
                  key={answer.id}
                  aria-pressed={answers[check.id] === answer.id}
                  onClick={() => onAnswer(check, answer.id)}
                >
                  {answer.text}
                </Button>
              ))}
            </div>
          </li>
        ))}
      </ol>
    </section>
  );
}
