"use client";

import { useState, useTransition } from "react";
import { SetupForm } from "@/components/setup";
import { Button, Field, form, page, Panel } from "@/components/ui";
import type { CriteriaSummary } from "@/lib/accept";
import { inWords, type Answer } from "@/lib/base";
import { startingSetup, type ExerciseContent } from "@/lib/course";
import { checkSetup, fieldLabel, type RunSetup } from "@/lib/setup";
import { electrodeClasses, joints, positions } from "@/lib/trade";
import type { UnitPreferences } from "@/lib/units";
import { CriteriaFields } from "./criteria-fields";
import { RubricLines } from "./rubric-lines";

export interface ExerciseInput {
  readonly title: string;
  readonly content: ExerciseContent;
  readonly open: boolean;
  readonly withoutAccount: boolean;
  /** ISO 8601, UTC. */
  readonly dueAt: string | null;
}

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

/** An ISO instant as the browser's local date and time field wants it, and back. */
function localText(iso: string | null): string {
  if (iso === null) return "";
  const at = new Date(iso);
  return new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
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
  const startFrom = (name: string) => {
    const found = setups.find((one) => one.name === name);
    if (!found) return;
    const { setup } = found;
    say({
      setup,
      joint: content.joint ?? setup.joint,
      position: content.position ?? setup.position,
      electrodeClass: content.electrodeClass ?? setup.electrodeClass,
    });
  };
  const setSetup = (setup: RunSetup) =>
    say({ setup, joint: setup.joint, position: setup.position, electrodeClass: setup.electrodeClass });
  const shown = startingSetup(content);
  return (
    <div className={page.stack}>
      <Panel title="What is asked" tone="straw">
        <Field label="Title">
          {(ids) => (
            <input
              {...ids}
              value={input.title}
              maxLength={120}
              onChange={(event) => change({ title: event.target.value })}
            />
          )}
        </Field>
        <Field label="Aim" hint="What the bead is to be, in your words; the student reads it on the phone.">
          {(ids) => (
            <textarea
              {...ids}
              rows={4}
              maxLength={2000}
              value={content.aim}
              onChange={(event) => say({ aim: event.target.value })}
            />
          )}
        </Field>
        <div className={page.fields}>
          <Pick
            label={fieldLabel("joint")}
            value={content.joint}
            choices={joints}
            words={words.joints}
            onPick={(joint) => say({ joint })}
          />
          <Pick
            label={fieldLabel("position")}
            value={content.position}
            choices={positions}
            words={words.positions}
            onPick={(position) => say({ position })}
          />
          <Field label={fieldLabel("electrodeClass")}>
            {(ids) => (
              <>
                <input
                  {...ids}
                  list="exercise-classes"
                  maxLength={40}
                  value={content.electrodeClass ?? ""}
                  onChange={(event) => say({ electrodeClass: event.target.value || null })}
                />
                <datalist id="exercise-classes">
                  {electrodeClasses.map(({ id }) => (
                    <option key={id} value={id} />
                  ))}
                </datalist>
              </>
            )}
          </Field>
        </div>
      </Panel>
      <Panel title="Judged by" tone="bronze">
        <CriteriaFields criteria={criteria} content={content} onChange={say} />
      </Panel>
      <Panel title="Rubric" tone="purple">
        <RubricLines lines={content.rubric} onChange={(rubric) => say({ rubric: [...rubric] })} />
      </Panel>
      <Panel title="Set-up to start from" tone="blue">
        <Field
          label="Fill in from"
          hint="An example or a set-up saved before; everything can be changed below."
        >
          {(ids) => (
            <select {...ids} value="" onChange={(event) => startFrom(event.target.value)}>
              <option value="">Choose …</option>
              {setups.map(({ name }) => (
                <option key={name} value={name}>
                  {name}
                </option>
              ))}
            </select>
          )}
        </Field>
        <details className={page.details}>
          <summary>The whole set-up</summary>
          <SetupForm setup={shown} onChange={setSetup} units={units} findings={checkSetup(shown)} />
        </details>
      </Panel>
      <Panel title="Handing in">
        <Field label="Due, if there is a date" hint="A late bead is still taken, and is seen to be late.">
          {(ids) => (
            <input
              {...ids}
              type="datetime-local"
              value={localText(input.dueAt)}
              suppressHydrationWarning
              onChange={({ target }) =>
                change({ dueAt: target.value === "" ? null : new Date(target.value).toISOString() })
              }
            />
          )}
        </Field>
        <label className={form.check}>
          <input
            type="checkbox"
            checked={input.open}
            onChange={(event) => change({ open: event.target.checked })}
          />
          Takes beads now
        </label>
        <label className={form.check}>
          <input
            type="checkbox"
            checked={input.withoutAccount}
            onChange={(event) => change({ withoutAccount: event.target.checked })}
          />
          A student may hand in without an account, by the code on the bench
        </label>
      </Panel>
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

function Pick<T extends string>({
  label,
  value,
  choices,
  words,
  onPick,
}: {
  label: string;
  value: T | null;
  choices: readonly T[];
  words: Readonly<Record<string, string>>;
  onPick: (value: T | null) => void;
}) {
  return (
    <Field label={label}>
      {(ids) => (
        <select
          {...ids}
          value={value ?? ""}
          onChange={({ target }) => onPick(choices.find((one) => one === target.value) ?? null)}
        >
          <option value="">not said</option>
          {choices.map((one) => (
            <option key={one} value={one}>
              {words[one] ?? one}
            </option>
          ))}
        </select>
      )}
    </Field>
  );
}
