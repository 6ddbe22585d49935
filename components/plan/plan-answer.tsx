"use client";

import { FileText, FlaskConical, Flame, ScrollText } from "lucide-react";
import { useMemo } from "react";
import { Button, buttonClass } from "@/components/ui";
import { planIssueSentence, planQuery, planRun, waysOut, waySentence, type PlanAsk } from "@/lib/plan";
import { runSheet, type RunSheetDocument } from "@/lib/report";
import type { UnitPreferences } from "@/lib/units";
import styles from "./answer.module.css";

interface Props {
  ask: PlanAsk;
  units: UnitPreferences;
  onStart: ((query: string) => Promise<void>) | null;
  onTake: (ask: PlanAsk) => void;
}

/** The plan in one screen of a phone, or what is still asked, or why there is none and what would make it go. */
export function PlanAnswer({ ask, units, onStart, onTake }: Props) {
  const planned = useMemo(() => planRun(ask), [ask]);
  if (planned.ok) return <Planned sheet={runSheet(planned.value, ask, units)} ask={ask} onStart={onStart} />;
  const asks = planned.issues.filter(({ code }) => code === "field-needed");
  if (asks.length > 0)
    return (
      <section className={styles.card} aria-live="polite" data-testid="plan">
        <h2>Still to say</h2>
        <ul>
          {asks.map((issue) => (
            <li key={issue.path.join()}>{planIssueSentence(issue, units)}</li>
          ))}
        </ul>
      </section>
    );
  return (
    <section className={styles.card} aria-live="polite" data-testid="plan">
      <h2>No plan for this</h2>
      {planned.issues.map((issue) => (
        <p key={issue.code + issue.path.join()} className={styles.lead}>
          {planIssueSentence(issue, units)}
        </p>
      ))}
      <Ways ask={ask} units={units} onTake={onTake} />
    </section>
  );
}

function Ways({ ask, units, onTake }: Omit<Props, "onStart">) {
  const ways = useMemo(() => waysOut(ask), [ask]);
  if (ways.length === 0) return null;
  return (
    <>
      <h3>What would make it go</h3>
      <div className={styles.ways}>
        {ways.map((way) => (
          <Button key={way.code} onClick={() => onTake(way.ask)}>
            {waySentence(way, units)}
          </Button>
        ))}
      </div>
    </>
  );
}

function Planned({
  sheet,
  ask,
  onStart,
}: {
  sheet: RunSheetDocument;
  ask: PlanAsk;
  onStart: Props["onStart"];
}) {
  const query = planQuery(ask);
  return (
    <section className={styles.card} aria-live="polite" data-testid="plan">
      <h2>{sheet.line}</h2>
      <Dials sheet={sheet} />
      {sheet.limits.length > 0 && (
        <ul className={styles.limits}>
          {sheet.limits.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      )}
      <dl className={styles.gives}>
        {sheet.gives.map(({ label, value, range }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>
              <strong>{value}</strong> {range && <span>{range}</span>}
            </dd>
          </div>
        ))}
      </dl>
      <div className={styles.actions}>
        {onStart && (
          <form action={onStart.bind(null, query)}>
            <Button type="submit" size="large" className={styles.start}>
              <Flame size={22} aria-hidden="true" /> Start a bead from this plan
            </Button>
          </form>
        )}
        {onStart && (
          <a className={buttonClass()} href={`/trials/new?${query}`}>
            <FlaskConical size={20} aria-hidden="true" /> Make a trial of it
          </a>
        )}
        <a className={buttonClass()} href={`/plan/sheet?${query}`}>
          <ScrollText size={20} aria-hidden="true" /> Run sheet
        </a>
        <a className={buttonClass()} href={`/plan/sheet.pdf?${query}`}>
          <FileText size={20} aria-hidden="true" /> PDF
        </a>
      </div>
    </section>
  );
}

/** The numbers to set, with how far each may be turned; polarity and gas stand with them. */
function Dials({ sheet }: { sheet: RunSheetDocument }) {
  const fixed = sheet.fixed.filter(({ label }) => label === "Polarity" || label === "Shielding gas");
  return (
    <dl className={styles.dials}>
      {sheet.dials.map(({ label, values, range, why }) => (
        <div key={label} title={why}>
          <dt>{label}</dt>
          <dd className={styles.value}>{values[0]}</dd>
          <dd className={styles.range}>{range}</dd>
        </div>
      ))}
      <div>
        <dt>Pace</dt>
        <dd className={styles.value}>{sheet.pace.seconds}</dd>
        <dd className={styles.range}>{sheet.pace.length}</dd>
      </div>
      {fixed.map(({ label, value }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd className={styles.word}>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
