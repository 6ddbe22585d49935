"use client";

import { SetupForm } from "@/components/setup";
import { Field, fieldTimeText, form, LocalTime, page, Panel, useOwnZone } from "@/components/ui";
import { startingSetup, type ExerciseContent } from "@/lib/course";
import { checkSetup, fieldLabel, type RunSetup } from "@/lib/setup";
import { electrodeClasses, joints, positions } from "@/lib/trade";
import type { UnitPreferences } from "@/lib/units";
import type { ExerciseInput } from "./exercise-input";

type Change = (part: Partial<ExerciseInput>) => void;
type Say = (part: Partial<ExerciseContent>) => void;

/** What the bead is to be. */
export function AskedPanel({
  input: { title, content },
  words,
  onChange,
  onSay,
}: {
  input: ExerciseInput;
  words: {
    readonly joints: Readonly<Record<string, string>>;
    readonly positions: Readonly<Record<string, string>>;
  };
  onChange: Change;
  onSay: Say;
}) {
  return (
    <Panel title="What is asked" tone="straw">
      <Field label="Title">
        {(ids) => (
          <input
            {...ids}
            value={title}
            maxLength={120}
            onChange={({ target }) => onChange({ title: target.value })}
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
            onChange={({ target }) => onSay({ aim: target.value })}
          />
        )}
      </Field>
      <div className={page.fields}>
        <Pick
          label={fieldLabel("joint")}
          value={content.joint}
          choices={joints}
          words={words.joints}
          onPick={(joint) => onSay({ joint })}
        />
        <Pick
          label={fieldLabel("position")}
          value={content.position}
          choices={positions}
          words={words.positions}
          onPick={(position) => onSay({ position })}
        />
        <WireClass value={content.electrodeClass} onSay={onSay} />
      </div>
    </Panel>
  );
}

function WireClass({ value, onSay }: { value: string | null; onSay: Say }) {
  return (
    <Field label={fieldLabel("electrodeClass")}>
      {(ids) => (
        <>
          <input
            {...ids}
            list="exercise-classes"
            maxLength={40}
            value={value ?? ""}
            onChange={({ target }) => onSay({ electrodeClass: target.value || null })}
          />
          <datalist id="exercise-classes">
            {electrodeClasses.map(({ id }) => (
              <option key={id} value={id} />
            ))}
          </datalist>
        </>
      )}
    </Field>
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

/** What of a set-up the exercise asks for. */
const askedOf = ({ joint, position, electrodeClass }: RunSetup) => ({ joint, position, electrodeClass });

/** What the exercise already asks for stays. */
const startedFrom = (setup: RunSetup, content: ExerciseContent): Partial<ExerciseContent> => ({
  setup,
  joint: content.joint ?? setup.joint,
  position: content.position ?? setup.position,
  electrodeClass: content.electrodeClass ?? setup.electrodeClass,
});

/** The set-up a student starts from. */
export function StartPanel({
  content,
  setups,
  units,
  onSay,
}: {
  content: ExerciseContent;
  /** Set-ups to start from, with their names. */
  setups: readonly { readonly name: string; readonly setup: RunSetup }[];
  units: UnitPreferences;
  onSay: Say;
}) {
  const shown = startingSetup(content);
  const startFrom = (name: string) => {
    const found = setups.find((one) => one.name === name);
    if (found) onSay(startedFrom(found.setup, content));
  };
  const setSetup = (setup: RunSetup) => onSay({ setup, ...askedOf(setup) });
  return (
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
  );
}

/** Until when, and from whom. */
export function HandingInPanel({ input, onChange }: { input: ExerciseInput; onChange: Change }) {
  // Asked of the browser, because what the server wrote into the field by its own clock would stay there.
  const zone = useOwnZone();
  return (
    <Panel title="Handing in">
      <Field label="Due, if there is a date" hint="A late bead is still taken, and is seen to be late.">
        {(ids) => (
          <input
            {...ids}
            type="datetime-local"
            value={input.dueAt === null ? "" : fieldTimeText(input.dueAt, zone)}
            onChange={({ target: { value } }) =>
              onChange({ dueAt: value === "" ? null : new Date(value).toISOString() })
            }
          />
        )}
      </Field>
      {input.dueAt && (
        <p>
          Due <LocalTime iso={input.dueAt} zone />; everybody reads it by their own clock.
        </p>
      )}
      <label className={form.check}>
        <input
          type="checkbox"
          checked={input.open}
          onChange={({ target }) => onChange({ open: target.checked })}
        />
        Takes beads now
      </label>
      <label className={form.check}>
        <input
          type="checkbox"
          checked={input.withoutAccount}
          onChange={({ target }) => onChange({ withoutAccount: target.checked })}
        />
        A student may hand in without an account, by the code on the bench
      </label>
      <label className={form.check}>
        <input
          type="checkbox"
          checked={input.content.namesShown}
          onChange={({ target }) => onChange({ content: { ...input.content, namesShown: target.checked } })}
        />
        Whoever has the code sees the names of the group and chooses theirs
      </label>
    </Panel>
  );
}
