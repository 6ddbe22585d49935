"use client";

import { Archive, Flame } from "lucide-react";
import { useState, useTransition, type ReactNode } from "react";
import { Button, buttonClass, form, page, Panel } from "@/components/ui";
import { inWords, type Answer } from "@/lib/base";
import type { TrialSheetDocument } from "@/lib/report";
import { showReading } from "@/lib/setup";
import { responseRows, type Trial } from "@/lib/trials";
import { bareQuantity, lengthSystem, type UnitPreferences } from "@/lib/units";
import { CourseChart } from "./course-chart";
import { CourseMap } from "./course-map";
import styles from "./trials.module.css";

interface Props {
  id: string;
  trial: Trial;
  sheet: TrialSheetDocument;
  units: UnitPreferences;
  /** Begins the bead of a point; null for whoever may not. */
  onBegin: ((place: number) => Promise<Answer<null>>) | null;
  /** The trial with its beads as an archive; null for whoever may not export. */
  archive: string | null;
  /** Beads side by side. */
  children: ReactNode;
}

/** A trial: what to run next, what may be said of a best, the course, the beads. */
export function TrialView({ id, trial, sheet, units, onBegin, archive, children }: Props) {
  return (
    <>
      <h1>{sheet.title}</h1>
      <p className={page.note}>
        {sheet.line}. {sheet.aim}
      </p>
      <Next sheet={sheet} onBegin={onBegin} />
      <Panel title="The best" tone="straw">
        <p data-testid="best">
          <strong>{sheet.best}</strong>
        </p>
        {sheet.region && <p>{sheet.region}</p>}
        <Course trial={trial} sheet={sheet} units={units} />
        {sheet.effects.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <a className={buttonClass()} href={`/cards/new?trial=${id}`}>
          Make a card of it
        </a>
      </Panel>
      <Panel title="What is not known" tone="bronze">
        <ul className={styles.list}>
          {sheet.unknown.map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </Panel>
      <Panel title="The beads" tone="purple">
        <Rows sheet={sheet} />
      </Panel>
      <Panel title="Side by side, in the order of the knob" tone="blue">
        {children}
      </Panel>
      {archive && (
        <div>
          <a className={buttonClass()} href={archive} download>
            <Archive size={20} aria-hidden="true" /> Archive of the trial and its beads
          </a>
        </div>
      )}
    </>
  );
}

function Next({ sheet: { advice, next }, onBegin }: Pick<Props, "sheet" | "onBegin">) {
  const [pending, start] = useTransition();
  const [answer, setAnswer] = useState<Answer<null> | null>(null);
  return (
    <section className={styles.next} aria-live="polite" data-testid="next">
      <p>{next}</p>
      {advice.code === "run" && onBegin && (
        <Button
          size="large"
          tone="main"
          className={styles.begin}
          disabled={pending}
          onClick={() => start(async () => setAnswer(await onBegin(advice.place)))}
        >
          <Flame size={22} aria-hidden="true" /> {pending ? "Working …" : "Begin this bead"}
        </Button>
      )}
      {answer && !answer.ok && (
        <p role="alert" className={`${form.said} ${form.refused}`}>
          {inWords(answer)}
        </p>
      )}
    </section>
  );
}

function Course({ trial, sheet, units }: Pick<Props, "trial" | "sheet" | "units">) {
  if (sheet.course.length === 0) return <p>The course is drawn from the second bead that was read.</p>;
  const { unit } = responseRows[trial.aim.response];
  const showValue = (value: number): string =>
    bareQuantity(unit === "mm" ? "modelLength" : "tenths", value, lengthSystem(units.length));
  if (trial.knobs.length === 2) return <CourseMap sheet={sheet} showValue={showValue} />;
  const show = showReading(units);
  const { field } = trial.knobs[0]!;
  return (
    <CourseChart
      sheet={sheet}
      target={trial.aim.target}
      showKnob={(value) => show(field, value).split(" ")[0]!}
      showValue={showValue}
    />
  );
}

function Rows({ sheet: { rows, responseLabel } }: Pick<Props, "sheet">) {
  return (
    <ol className={styles.rows}>
      {rows.map(({ place, settings, beadId, bead, reading, others, verdict, off }) => (
        <li key={place}>
          <span className={styles.place}>{place + 1}</span>
          <span className={styles.what}>
            {beadId ? <a href={`/beads/${beadId}`}>{bead}</a> : bead}: {settings}
            {(others || verdict) && <small>{[verdict, others].filter(Boolean).join(" · ")}</small>}
            {off && <small>{off}</small>}
          </span>
          <strong title={responseLabel}>{reading}</strong>
        </li>
      ))}
    </ol>
  );
}
