"use client";

import { ShieldAlert } from "lucide-react";
import { memo, useDeferredValue, useMemo } from "react";
import { Panel } from "@/components/ui";
import type { Proposal } from "@/lib/assess";
import type { Statement } from "@/lib/diagnose";
import { reasonLine } from "@/lib/report";
import type { RunSetup } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import { AnswerPanel, type AnswerProps } from "./answer-panel";
import { CausesList } from "./causes-list";
import styles from "./causes-panel.module.css";
import { GivenAnswers } from "./given-answers";
import { MindChanger } from "./mind-changer";
import { OneMoreThing } from "./one-more-thing";
import { Origins } from "./origins";

export interface CausesPanelProps extends AnswerProps {
  readonly answers: Readonly<Record<string, string>>;
  readonly process: RunSetup["process"];
  readonly onProcess: (process: NonNullable<RunSetup["process"]>) => void;
  readonly onForget: (questionId: string) => void;
}

/** The answer first, then what would better it, then what it all rests on; the last follows once the answer is seen. */
export function CausesPanel(props: CausesPanelProps) {
  const { kind, diagnosis, evidence, proposed, answers, units } = props;
  const answered = kind === "change" ? (proposed?.first.causeId ?? null) : null;
  const said = useMemo(
    () => ({ kind, diagnosis, evidence, answered, units }),
    [kind, diagnosis, evidence, answered, units],
  );
  return (
    <div className={styles.stack}>
      <AnswerPanel {...props} />
      <GivenAnswers answers={answers} onForget={props.onForget} />
      {kind !== "ask" && <OneMoreThing {...props} />}
      <RestsOn said={useDeferredValue(said)} />
    </div>
  );
}

interface Said extends Pick<AnswerProps, "kind" | "diagnosis" | "evidence" | "units"> {
  /** The cause that the answer names; null: it names none. */
  readonly answered: Proposal["first"]["causeId"] | null;
}

/** What the answer rests on and where it ends. */
const RestsOn = memo(function RestsOn({ said }: { said: Said }) {
  const { kind, diagnosis, evidence, answered, units } = said;
  const { causes, causeless, contradictions, cautions } = diagnosis;
  return (
    <>
      {contradictions
        .filter(({ causeId }) => causeId === null || causeId !== answered)
        .map((one) => (
          <Statements
            key={`${one.code} ${one.fields.join()}`}
            tone="danger"
            title="The record contradicts itself"
            statements={[one]}
            units={units}
          />
        ))}
      {causeless.length > 0 && (
        <Statements tone="bronze" title="Not from how it was run" statements={causeless} units={units} />
      )}
      {causes.length > 0 && kind !== "nothing" && kind !== "unlooked" && (
        <CausesList {...{ diagnosis, evidence, answered, units }} />
      )}
      {kind === "change" && <MindChanger evidence={evidence} diagnosis={diagnosis} />}
      <Statements
        tone="straw"
        title={
          <>
            <ShieldAlert size={22} aria-hidden="true" /> Cautions and limits
          </>
        }
        statements={cautions.filter(({ level }) => level !== "stop")}
        units={units}
      />
    </>
  );
});

/** Sentences under one heading, their sources behind one sign. */
function Statements({
  tone,
  title,
  statements,
  units,
}: {
  tone: "danger" | "bronze" | "straw";
  title: React.ReactNode;
  statements: readonly Statement[];
  units: UnitPreferences;
}) {
  return (
    <Panel tone={tone} title={title}>
      {statements.map((one) => (
        <p key={one.sentence}>{reasonLine(one, units)}</p>
      ))}
      <Origins sources={statements.map(({ source }) => source)} />
    </Panel>
  );
}
