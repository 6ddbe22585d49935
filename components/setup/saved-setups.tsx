"use client";

import { Save, Trash2 } from "lucide-react";
import { useId, useState } from "react";
import { Button, Panel } from "@/components/ui";
import { inWords, type Answer } from "@/lib/base";
import { dayText } from "@/lib/report";
import { exampleSetups, type RunSetup } from "@/lib/setup";
import styles from "./saved-setups.module.css";

export interface SavedSetupsProps {
  readonly saved: readonly {
    readonly id: string;
    readonly name: string;
    readonly setup: RunSetup;
    readonly own: boolean;
    readonly earlier: readonly { readonly setup: RunSetup; readonly until: string }[];
  }[];
  /** The set-up of the bead before this one, offered first; null when there is none. */
  readonly last: RunSetup | null;
  /** Whether it was applied; false where the person is asked first. */
  readonly onApply: (setup: RunSetup) => boolean;
  readonly onSave: (name: string) => Promise<Answer<unknown>>;
  readonly onDelete: (id: string) => Promise<Answer<unknown>>;
}

/** Start from a set-up: the last one, one of the shop's own, or an example; and keep this one under a name. */
export function SavedSetups({ saved, last, onApply, onSave, onDelete }: SavedSetupsProps) {
  const [answer, setAnswer] = useState<string | null>(null);
  const exampleId = useId();
  const apply = (setup: RunSetup, name: string) => {
    setAnswer(onApply(setup) ? `${name} applied. Change what was different on this bead.` : null);
  };
  const remove = async (id: string, name: string) => {
    const done = await onDelete(id);
    setAnswer(done.ok ? `${name} removed.` : inWords(done));
  };
  return (
    <Panel title="Start from a set-up">
      {last && (
        <Button size="large" onClick={() => apply(last, "The last set-up")}>
          Same as the last bead
        </Button>
      )}
      {saved.length > 0 && (
        <ul className={styles.list} aria-label="Set-ups of this shop and your own">
          {saved.map(({ id, name, setup, own }) => (
            <li key={id}>
              <button type="button" className={styles.apply} onClick={() => apply(setup, name)}>
                {own ? `${name} (own)` : name}
              </button>
              <Button tone="danger" aria-label={`Remove ${name}`} onClick={() => void remove(id, name)}>
                <Trash2 size={20} aria-hidden="true" />
              </Button>
            </li>
          ))}
        </ul>
      )}
      <EarlierOnes saved={saved} onChoose={apply} />
      <label htmlFor={exampleId} className={styles.label}>
        Example set-ups
      </label>
      <select
        id={exampleId}
        value=""
        onChange={({ target }) => {
          const chosen = exampleSetups.find(({ id }) => id === target.value);
          if (chosen) apply(chosen.setup, chosen.name);
        }}
      >
        <option value="">Choose one…</option>
        {exampleSetups.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
      <p className={styles.hint}>Starting points for scrap, from common practice. They are no procedure.</p>
      <SaveUnderName onSave={onSave} onAnswer={setAnswer} />
      <p role="status" className={styles.answer}>
        {answer}
      </p>
    </Panel>
  );
}

/** What set-ups were before they were saved over; nothing where none was. */
function EarlierOnes({
  saved,
  onChoose,
}: Pick<SavedSetupsProps, "saved"> & { onChoose: (setup: RunSetup, name: string) => void }) {
  const id = useId();
  const all = saved.flatMap(({ name, earlier }) =>
    earlier.map(({ setup, until }) => ({ setup, name: `${name}, until ${dayText(until)}` })),
  );
  if (all.length === 0) return null;
  return (
    <>
      <label htmlFor={id} className={styles.label}>
        As they were before
      </label>
      <select
        id={id}
        value=""
        onChange={({ target }) => {
          const chosen = all[Number(target.value)];
          if (chosen) onChoose(chosen.setup, chosen.name);
        }}
      >
        <option value="">Choose one…</option>
        {all.map(({ name }, i) => (
          <option key={i} value={i}>
            {name}
          </option>
        ))}
      </select>
    </>
  );
}

function SaveUnderName({
  onSave,
  onAnswer,
}: Pick<SavedSetupsProps, "onSave"> & { onAnswer: (text: string) => void }) {
  const [name, setName] = useState("");
  const [saving, setSaving] = useState(false);
  const id = useId();
  const save = async () => {
    setSaving(true);
    const done = await onSave(name.trim());
    setSaving(false);
    onAnswer(done.ok ? `Saved as “${name.trim()}”.` : inWords(done));
    if (done.ok) setName("");
  };
  return (
    <form
      className={styles.save}
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim() !== "" && !saving) void save();
      }}
    >
      <label htmlFor={id} className={styles.label}>
        Keep this set-up under a name
      </label>
      <div className={styles.saveRow}>
        <input id={id} value={name} maxLength={80} onChange={({ target }) => setName(target.value)} />
        <Button type="submit" tone="main" disabled={name.trim() === "" || saving}>
          <Save size={20} aria-hidden="true" /> Save
        </Button>
      </div>
    </form>
  );
}
