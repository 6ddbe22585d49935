"use client";

import { CriteriaOptions, NewerVersion } from "@/components/criteria";
import { SaveBar, useEdited, type Editing } from "@/components/saving";
import { LengthField } from "@/components/setup";
import { Button, Field, form, Panel } from "@/components/ui";
import type { CriteriaSummary } from "@/lib/accept";
import { wholeWeld, type JobContent, type JobPart, type JobWeld } from "@/lib/inspect";
import { jointWords, positionWords, processWords } from "@/lib/report";
import { joints, positions, processes } from "@/lib/trade";
import type { UnitPreferences } from "@/lib/units";
import { AskedExtent } from "./asked-extent";
import { AskedSize } from "./asked-size";
import { ChoiceField, TextField } from "./fields";
import styles from "./inspect.module.css";

interface Choice {
  readonly id: string;
  readonly title: string;
}

const titled = <T extends string>(ids: readonly T[], words: Readonly<Record<T, string>>) =>
  ids.map((id) => ({ id, title: words[id] }));

/** A key for a new row, unlike any there is. */
const freshId = (letter: string, rows: readonly { readonly id: string }[]): string => {
  let next = rows.length + 1;
  while (rows.some(({ id }) => id === `${letter}${next}`)) next += 1;
  return `${letter}${next}`;
};

/** "W9" gives "W10", or the first number after it that is free; "left" gives "left 2". */
function nextNumber(number: string, welds: readonly JobWeld[]): string {
  const [, head = number, digits] = /^(.*?)(\d*)$/.exec(number) ?? [];
  const from = digits ? Number(digits) : 1;
  for (let next = from + 1; ; next += 1) {
    const wanted = digits ? `${head}${String(next).padStart(digits.length, "0")}` : `${number} ${next}`;
    if (!welds.some((weld) => weld.number === wanted)) return wanted;
  }
}

/** What can be done to the parts and welds of a job. */
function rowEdits({ parts, welds }: JobContent, change: (part: Partial<JobContent>) => void) {
  return {
    setPart: (id: string, part: Partial<JobPart>) =>
      change({ parts: parts.map((one) => (one.id === id ? { ...one, ...part } : one)) }),
    setWeld: (id: string, weld: Partial<JobWeld>) =>
      change({ welds: welds.map((one) => (one.id === id ? { ...one, ...weld } : one)) }),
    strikePart: (id: string) => change({ parts: parts.filter((one) => one.id !== id) }),
    strikeWeld: (id: string) => change({ welds: welds.filter((one) => one.id !== id) }),
    addPart: () => {
      const id = freshId("p", parts);
      const name = `Part ${parts.length + 1}`;
      change({ parts: [...parts, { id, name, drawing: "", material: "", thicknessMm: null }] });
    },
    /** The same again under the next number, beside the one it was made after. */
    copyWeld: (weld: JobWeld) => {
      const copied = { ...weld, id: freshId("w", welds), number: nextNumber(weld.number, welds) };
      const at = welds.findIndex(({ id }) => id === weld.id) + 1;
      change({ welds: welds.toSpliced(at, 0, copied) });
    },
    addWeld: () => {
      const id = freshId("w", welds);
      const partId = parts[0]?.id ?? null;
      const unsaid = { joint: null, position: null, welderId: null, welderMark: "", lengthMm: null };
      const asked = { asked: wholeWeld, askedNote: "" };
      change({ welds: [...welds, { id, number: `W${id.slice(1)}`, partId, ...unsaid, ...asked }] });
    },
  };
}

/** Everything a job says, saved as a whole. */
export function JobEditor({
  criteria,
  people,
  units,
  ...editing
}: Editing<JobContent> & {
  readonly criteria: readonly CriteriaSummary[];
  readonly people: readonly Choice[];
  readonly units: UnitPreferences;
}) {
  const edited = useEdited(editing);
  const { content, change, submit } = edited;
  const rows = rowEdits(content, change);
  return (
    <Panel title="What is to be inspected" tone="straw">
      <form
        className={styles.wide}
        aria-label="Job"
        onSubmit={(event) => {
          event.preventDefault();
          submit();
        }}
      >
        <JobHead content={content} change={change} criteria={criteria} />
        {content.parts.map((part) => (
          <PartFields
            key={part.id}
            part={part}
            units={units}
            change={(next) => rows.setPart(part.id, next)}
            strike={() => rows.strikePart(part.id)}
          />
        ))}
        <Button onClick={rows.addPart}>Add a part</Button>
        {content.welds.map((weld) => (
          <WeldFields
            key={weld.id}
            weld={weld}
            parts={content.parts}
            people={people}
            criteria={criteria}
            units={units}
            change={(next) => rows.setWeld(weld.id, next)}
            strike={() => rows.strikeWeld(weld.id)}
            copy={() => rows.copyWeld(weld)}
          />
        ))}
        <Button onClick={rows.addWeld}>Add a weld</Button>
        <SaveBar edited={edited}>Save the job</SaveBar>
      </form>
    </Panel>
  );
}

function JobHead({
  content,
  change,
  criteria,
}: {
  readonly content: JobContent;
  readonly change: (part: Partial<JobContent>) => void;
  readonly criteria: readonly CriteriaSummary[];
}) {
  return (
    <div className={styles.grid}>
      <TextField label="Title" value={content.title} onChange={(title) => change({ title })} />
      <TextField label="Maker of the part" value={content.maker} onChange={(maker) => change({ maker })} />
      <TextField
        label="Customer"
        value={content.customer ?? ""}
        onChange={(customer) => change({ customer })}
      />
      <TextField
        label="Contract or order"
        value={content.contract}
        onChange={(contract) => change({ contract })}
        most={80}
      />
      <TextField
        label="Procedure (WPS)"
        value={content.procedure}
        onChange={(procedure) => change({ procedure })}
        most={80}
      />
      <ChoiceField
        label="Welding process"
        value={content.process}
        onChange={(process) => change({ process })}
        choices={titled(processes, processWords)}
      />
      <Field label="Acceptance criteria">
        {(ids) => (
          <select
            {...ids}
            value={content.criteriaId ?? ""}
            onChange={({ target }) => change({ criteriaId: target.value || null })}
          >
            <option value="">not recorded</option>
            <CriteriaOptions criteria={criteria} />
          </select>
        )}
      </Field>
      <NewerVersion
        chosen={content.criteriaId}
        criteria={criteria}
        what="job"
        onTake={(criteriaId) => change({ criteriaId })}
      />
    </div>
  );
}

function PartFields({
  part,
  units,
  change,
  strike,
}: {
  readonly part: JobPart;
  readonly units: UnitPreferences;
  readonly change: (part: Partial<JobPart>) => void;
  readonly strike: () => void;
}) {
  return (
    <fieldset className={styles.item}>
      <legend>{part.name}</legend>
      <div className={styles.grid}>
        <TextField label="Part" value={part.name} onChange={(name) => change({ name })} most={80} />
        <TextField
          label="Drawing number"
          value={part.drawing}
          onChange={(drawing) => change({ drawing })}
          most={80}
        />
        <TextField
          label="Material"
          value={part.material}
          onChange={(material) => change({ material })}
          most={80}
        />
        <LengthField
          label="Thickness"
          hint="of the thinner plate"
          value={part.thicknessMm}
          units={units}
          allowZero
          onChange={(thicknessMm) => change({ thicknessMm })}
        />
      </div>
      <Button onClick={strike}>Strike {part.name} off</Button>
    </fieldset>
  );
}

function WeldFields({
  weld,
  parts,
  people,
  criteria,
  units,
  change,
  strike,
  copy,
}: {
  readonly weld: JobWeld;
  readonly criteria: readonly CriteriaSummary[];
  readonly copy: () => void;
  readonly parts: readonly JobPart[];
  readonly people: readonly Choice[];
  readonly units: UnitPreferences;
  readonly change: (weld: Partial<JobWeld>) => void;
  readonly strike: () => void;
}) {
  return (
    <fieldset className={styles.item}>
      <legend>Weld {weld.number}</legend>
      <div className={styles.grid}>
        <TextField
          label="Weld number"
          value={weld.number}
          onChange={(number) => change({ number })}
          most={40}
        />
        <ChoiceField
          label="On part"
          value={weld.partId}
          onChange={(partId) => change({ partId })}
          choices={parts.map(({ id, name }) => ({ id, title: name }))}
        />
        <ChoiceField
          label="Joint"
          value={weld.joint}
          onChange={(joint) => change({ joint })}
          choices={titled(joints, jointWords)}
        />
        <ChoiceField
          label="Position"
          value={weld.position}
          onChange={(position) => change({ position })}
          choices={titled(positions, positionWords)}
        />
        <ChoiceField
          label="Welder"
          value={weld.welderId}
          onChange={(welderId) => change({ welderId })}
          choices={people}
        />
        <TextField
          label="or their mark"
          hint="the record holds the mark, never the name"
          value={weld.welderMark}
          onChange={(welderMark) => change({ welderMark })}
          most={20}
        />
        <AskedExtent weld={weld} units={units} change={change} />
        <AskedSize weld={weld} units={units} criteria={criteria} change={change} />
      </div>
      <div className={form.row}>
        <Button onClick={copy}>Another like weld {weld.number}</Button>
        <Button onClick={strike}>Strike weld {weld.number} off</Button>
      </div>
    </fieldset>
  );
}
