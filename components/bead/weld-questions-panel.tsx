"use client";

import { LengthField } from "@/components/setup";
import { Chip, Panel } from "@/components/ui";
import { weldKinds, type CriteriaSummary, type WeldFactName } from "@/lib/accept";
import { seams, weldKind, type Seam, type WeldQuestions } from "@/lib/assess";
import { seamWords, weldFactWords } from "@/lib/report";
import type { RunSetup } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import styles from "./verdict-panel.module.css";

/** The facts that the chosen set asks about this joint; of an unknown joint all that it asks of any. */
function factsToAsk(set: CriteriaSummary, { joint }: RunSetup): readonly WeldFactName[] {
  const kinds = joint === null ? weldKinds : [weldKind(joint)];
  const asked = [...new Set(kinds.flatMap((kind) => set.weldFacts[kind]))];
  // A lapped edge is only on a lap joint.
  return asked.filter((name) => name !== "alongLapEdge" || joint === "lap");
}

const yes = [true, "Yes"] as const;
const no = [false, "No"] as const;
const unsure = [null, "Don't know"] as const;
const seamAnswers = [...seams.map((seam) => [seam, seamWords[seam]] as const), unsure];

/** What a code asks about the weld itself. "Don't know" is an answer, and leaves the clause open. */
export function WeldQuestionsPanel({
  set,
  setup,
  weld,
  units,
  onChange,
}: {
  set: CriteriaSummary;
  setup: RunSetup;
  weld: WeldQuestions;
  units: UnitPreferences;
  onChange: (weld: WeldQuestions) => void;
}) {
  const asked = factsToAsk(set, setup);
  if (asked.length === 0) return null;
  return (
    <Panel title="About this weld" tone="straw">
      {asked.map((name) => (
        <WeldQuestion
          key={name}
          {...{ name, weld, units }}
          onChange={(change) => onChange({ ...weld, ...change })}
        />
      ))}
    </Panel>
  );
}

function WeldQuestion({
  name,
  weld,
  units,
  onChange,
}: {
  name: WeldFactName;
  weld: WeldQuestions;
  units: UnitPreferences;
  onChange: (change: Partial<WeldQuestions>) => void;
}) {
  const text = weldFactWords[name];
  switch (name) {
    case "rootWidthMm":
      return (
        <LengthField
          label={text}
          value={weld.rootWidthMm}
          units={units}
          placeholder="not known"
          // Nought or less is no width; the schema would refuse the whole save.
          onChange={(mm) => onChange({ rootWidthMm: mm !== null && mm > 0 ? mm : null })}
        />
      );
    case "seam":
      return (
        <Question<Seam | null>
          text={text}
          value={weld.seam}
          answers={seamAnswers}
          onAnswer={(seam) => onChange({ seam })}
        />
      );
    case "closed":
      return (
        <Question
          text={text}
          value={weld.closed}
          answers={[yes, no]}
          onAnswer={(closed) => onChange({ closed })}
        />
      );
    default:
      return (
        <Question<boolean | null>
          text={text}
          value={weld[name]}
          answers={[yes, no, unsure]}
          onAnswer={(answer) => onChange({ [name]: answer })}
        />
      );
  }
}

function Question<T extends string | boolean | null>({
  text,
  value,
  answers,
  onAnswer,
}: {
  text: string;
  value: T;
  answers: readonly (readonly [answer: T, words: string])[];
  onAnswer: (answer: T) => void;
}) {
  return (
    <div role="group" aria-label={text}>
      <p>{text}</p>
      <div className={styles.chips}>
        {answers.map(([answer, words]) => (
          <Chip key={words} on={value === answer} onClick={() => onAnswer(answer)}>
            {words}
          </Chip>
        ))}
      </div>
    </div>
  );
}
