"use client";

import { RotateCw, ShieldAlert } from "lucide-react";
import { useTransition } from "react";
import { Button, Panel } from "@/components/ui";
import { needsCheck } from "@/lib/base";
import type { Change, Check, Diagnosis, RankedCause, Statement, WhyItem } from "@/lib/diagnose";
import type { Proposal } from "@/lib/assess";
import { amountText, changeText, chanceWords, confidenceWords } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";
import styles from "./causes-panel.module.css";

export interface CausesPanelProps {
  readonly diagnosis: Diagnosis;
  /** null: nothing here needs a change, or an inspector comes first. */
  readonly proposed: Proposal | null;
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
  answers,
  units,
  onAnswer,
  onForgetAnswers,
  onRunAgain,
}: CausesPanelProps) {
  const { causes, checks, contradictions, cautions } = diagnosis;
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
      {!proposed && stops.length === 0 && (
        <Panel tone="ok" title="Nothing to change">
          <p>
            Nothing is marked and the set-up points at no fault. The list below only says how common each
            cause is.
          </p>
        </Panel>
      )}
      {causes.length > 0 && <Causes causes={causes} units={units} />}
      {checks.length > 0 && <Checks checks={checks} answers={answers} onAnswer={onAnswer} />}
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
          By the models then: {change.effects.map((amount) => amountText(amount, units)).join(", ")}
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

const SHOWN = 5;

function Causes({ causes, units }: { causes: readonly RankedCause[]; units: UnitPreferences }) {
  const likely = causes.slice(0, SHOWN);
  const rest = causes.slice(SHOWN);
  return (
    <section className={styles.causes} aria-label="Likely causes">
      <h3>Likely causes</h3>
      <ol data-testid="causes">
        {likely.map((cause) => (
          <CauseRow key={cause.id} cause={cause} units={units} open={cause === likely[0]} />
        ))}
      </ol>
      {rest.length > 0 && (
        <details className={styles.rest}>
          <summary>{rest.length} less likely ones</summary>
          <ol>
            {rest.map((cause) => (
              <CauseRow key={cause.id} cause={cause} units={units} open={false} />
            ))}
          </ol>
        </details>
      )}
      <p className={styles.small}>
        The bars weigh published lists of causes against what is marked and recorded. They rank; they are not
        measured frequencies.
      </p>
    </section>
  );
}

function CauseRow({ cause, units, open }: { cause: RankedCause; units: UnitPreferences; open: boolean }) {
  const speaksFor = cause.why.filter((item) => item.direction === "for");
  const against = cause.why.filter((item) => item.direction === "against");
  return (
    <li className={styles.cause} data-cause={cause.id}>
      <details open={open}>
        <summary>
          <span className={styles.name}>{cause.name}</span>
          <span className={styles.chance}>{chanceWords(cause.probability)}</span>
          <meter
            className="visually-hidden"
            min={0}
            max={1}
            value={cause.probability}
            aria-label={`Weight of ${cause.name}`}
          />
          <span className={styles.bar} aria-hidden="true">
            <span style={{ width: `${Math.max(1, cause.probability * 100)}%` }} />
          </span>
        </summary>
        <p>{cause.sentence}</p>
        {cause.shop && cause.shop.confirmed > 0 && (
          <p className={styles.shop}>
            {cause.shop.confirmed} of {cause.shop.total} confirmed here
          </p>
        )}
        <WhyList title="Speaks for it" items={speaksFor} units={units} />
        <WhyList title="Speaks against it" items={against} units={units} />
        {cause.why.length === 0 && (
          <p className={styles.small}>
            Nothing recorded speaks for or against it; this is only how common it is.
          </p>
        )}
        <p>
          <strong>Correction:</strong> {cause.change.sentence} {changeText(cause.change, units)}
        </p>
      </details>
    </li>
  );
}

const WHY_SHOWN = 4;

function WhyList({
  title,
  items,
  units,
}: {
  title: string;
  items: readonly WhyItem[];
  units: UnitPreferences;
}) {
  if (items.length === 0) return null;
  const rest = items.slice(WHY_SHOWN);
  return (
    <div>
      <h4>{title}</h4>
      <WhyItems items={items.slice(0, WHY_SHOWN)} units={units} />
      {rest.length > 0 && (
        <details className={styles.rest}>
          <summary>{rest.length} lighter ones</summary>
          <WhyItems items={rest} units={units} />
        </details>
      )}
    </div>
  );
}

function WhyItems({ items, units }: { items: readonly WhyItem[]; units: UnitPreferences }) {
  return (
    <ul className={styles.why}>
      {items.map((item) => (
        <li key={item.key}>
          {item.sentence}
          {item.amounts.length > 0 && (
            <span className={styles.amounts}>
              {" "}
              {item.amounts.map((amount) => amountText(amount, units)).join(", ")}
            </span>
          )}
          <span className={styles.source}> {whyBasis(item)}</span>
        </li>
      ))}
    </ul>
  );
}

/** What a weight rests on: the document, how many more, and how sure it is where that is not "read in it". */
function whyBasis({ source, sources }: WhyItem): string {
  const doubt = needsCheck(source) ? confidenceWords[source.confidence] : "";
  if (source.confidence === "own-estimate") return doubt;
  const more = sources.length > 1 ? ` and ${sources.length - 1} more` : "";
  return `${source.document}${more}${doubt && ` (${doubt})`}`;
}

function Checks({
  checks,
  answers,
  onAnswer,
}: {
  checks: readonly Check[];
  answers: Readonly<Record<string, string>>;
  onAnswer: CausesPanelProps["onAnswer"];
}) {
  return (
    <section className={styles.checks}>
      <h3>Check next</h3>
      <p className={styles.small}>
        In the order that tells most for the effort. Each answer changes the causes above.
      </p>
      <ol>
        {checks.slice(0, 4).map((check) => (
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
