"use client";

import { useState, useTransition } from "react";
import { Button, page, Panel } from "@/components/ui";
import type { CriteriaSummary } from "@/lib/accept";
import { inWords, type Answer } from "@/lib/base";
import type { ExerciseContent } from "@/lib/course";
import type { RunSetup } from "@/lib/setup";
import type { UnitPreferences } from "@/lib/units";
import { CriteriaFields } from "./criteria-fields";
import { AskedPanel, HandingInPanel, StartPanel } from "./exercise-panels";
import type { ExerciseInput } from "./exercise-input";
import { RubricLines } from "./rubric-lines";

export interface ExerciseFormProps {
  readonly initial: ExerciseInput;
  readonly criteria: readonly CriteriaSummary[];
  /** Set-ups to start from, with their names. */
  readonly setups: readonly { readonly name: string; readonly setup: RunSetup }[];
  readonly words: {
    readonly joints: Readonly<Record<string, string>>;
    readonly positions: Readonly<Record<string, string>>;
  };
  readonly units: UnitPreferences;
  readonly save: (input: ExerciseInput) => Promise<Answer<unknown> | void>;
}

/** Everything an exercise says, on one page, saved as a whole. */
export function ExerciseForm({ initial, criteria, setups, words, units, save }: ExerciseFormProps) {
  const [input, setInput] = useState(initial);
  const [message, setMessage] = useState<string | null>(null);
  const [pending, start] = useTransition();
  const { content } = input;
  const change = (part: Partial<ExerciseInput>) => setInput((old) => ({ ...old, ...part }));
  const say = (part: Partial<ExerciseContent>) =>
    setInput((old) => ({ ...old, content: { ...old.content, ...part } }));
  const send = () =>
    start(async () => {
      const answer = await save(input);
      setMessage(answer && !answer.ok ? inWords(answer) : null);
    });
  return (
    <div className={page.stack}>
      <AskedPanel {...{ input, words }} onChange={change} onSay={say} />
      <Panel title="Judged by" tone="bronze">
        <CriteriaFields criteria={criteria} content={content} onChange={say} />
      </Panel>
      <Panel title="Rubric" tone="purple">
        <RubricLines lines={content.rubric} onChange={(rubric) => say({ rubric: [...rubric] })} />
      </Panel>
      <StartPanel {...{ content, setups, units }} onSay={say} />
      <HandingInPanel input={input} onChange={change} />
      {message && (
        <p className={page.alert} role="alert">
          {message}
        </p>
      )}
      <div className={page.buttons}>
        <Button tone="main" size="large" disabled={pending} onClick={send}>
          Save the exercise
        </Button>
      </div>
    </div>
  );
}
