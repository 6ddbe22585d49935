"use client";

import { Plus } from "lucide-react";
import { useRouter } from "next/navigation";
import { useState } from "react";
import { SaveBar, useEdited, type Editing, type Save, type SavedAndSaid } from "@/components/saving";
import { Button, Field, form, Panel } from "@/components/ui";
import type { ShopRow } from "@/lib/accept";
import type { UnitPreferences } from "@/lib/units";
import styles from "./criteria.module.css";
import { NotCarriedPanel } from "./not-carried";
import { draftErrors, movedRow, newRow, withoutRow, type ShopDraft } from "./shop-draft";
import { ShopRowFields } from "./shop-row-fields";
import { TryOut, type TriedBead, type TryOn } from "./try-out";

const MOST_ROWS = 100;

/** The revision is the version; the key is where a new set is found. */
export type SavedShopSet = SavedAndSaid & { readonly key: string };

interface ShopEditorProps extends Omit<Editing<ShopDraft>, "save"> {
  readonly save: Save<ShopDraft, SavedShopSet>;
  readonly tryOn: TryOn;
  readonly beads: readonly TriedBead[];
  readonly units: UnitPreferences;
}

/**
 * Limits being written: rows of one limit each, tried on a bead of the shop before they are saved as a version.
 * Revision 0 is a set that is not saved yet.
 */
export function ShopEditor({ tryOn, beads, units, ...editing }: ShopEditorProps) {
  const { edited, isNew, isLeaving } = useShopSet(editing);
  const { content, change, submit } = edited;
  const [asked, setAsked] = useState(false);
  const errors = draftErrors(content);
  const error = (path: string): string | undefined => (asked ? errors.get(path) : undefined);
  return (
    <form
      className={styles.editor}
      aria-label="Limits"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        setAsked(true);
        if (errors.size === 0) submit();
      }}
    >
      <NamePanel {...{ content, change }} titleError={error("title")} />
      {content.notCarried && content.notCarried.clauses.length > 0 && (
        <NotCarriedPanel notCarried={content.notCarried} onChange={(notCarried) => change({ notCarried })} />
      )}
      <Rows
        rows={content.rows}
        units={units}
        error={error}
        onRows={(rows) => change({ rows })}
        onRemove={(id) => change(withoutRow(content, id))}
      />
      {content.rows.length === 0 && asked && (
        <p role="alert" className={`${form.said} ${form.refused}`}>
          Add at least one limit.
        </p>
      )}
      <TryOut draft={content} beads={beads} isSound={errors.size === 0} tryOn={tryOn} />
      {asked && errors.size > 0 && (
        <p role="alert" className={`${form.said} ${form.refused}`}>
          {errors.size === 1 ? "One field does" : `${errors.size} fields do`} not fit yet, so nothing was
          saved.
        </p>
      )}
      <SaveBar edited={edited} isLeaving={isLeaving}>
        {isNew ? "Save as version 1" : "Save as the next version"}
      </SaveBar>
    </form>
  );
}

/** A set being edited; a new one is opened under its key once it is saved. */
function useShopSet(editing: Pick<ShopEditorProps, "start" | "revision" | "save" | "readStored">) {
  const router = useRouter();
  const [isLeaving, setLeaving] = useState(false);
  const isNew = editing.revision === 0;
  const saveAndOpen = async (basedOn: number, draft: ShopDraft) => {
    const answer = await editing.save(basedOn, draft);
    if (!isNew || !answer.ok) return answer;
    setLeaving(true);
    router.push(`/criteria/${answer.value.key}`);
    return answer;
  };
  return { edited: useEdited({ ...editing, save: saveAndOpen }), isNew, isLeaving };
}

function NamePanel({
  content: { title, note },
  change,
  titleError,
}: {
  content: ShopDraft;
  change: (part: Partial<ShopDraft>) => void;
  titleError: string | undefined;
}) {
  return (
    <Panel title="What it is called" tone="blue">
      <Field
        label="Title"
        hint="An exercise or a contract, as it stands in the choice: “Stringers, first week”."
        error={titleError && "Give the limits a title of up to 120 letters."}
      >
        {(ids) => (
          <input
            {...ids}
            value={title}
            maxLength={120}
            autoComplete="off"
            onChange={({ target }) => change({ title: target.value })}
          />
        )}
      </Field>
      <Field label="Note" hint="For whom it is meant, what it rests on.">
        {(ids) => (
          <textarea
            {...ids}
            rows={3}
            maxLength={2000}
            value={note}
            onChange={({ target }) => change({ note: target.value })}
          />
        )}
      </Field>
    </Panel>
  );
}

/** One limit each, in the order they are shown in. */
function Rows({
  rows,
  units,
  error,
  onRows,
  onRemove,
}: {
  rows: readonly ShopRow[];
  units: UnitPreferences;
  error: (path: string) => string | undefined;
  onRows: (rows: readonly ShopRow[]) => void;
  onRemove: (id: string) => void;
}) {
  return (
    <>
      {rows.map((row, place) => (
        <ShopRowFields
          key={row.id}
          row={row}
          place={place}
          last={place === rows.length - 1}
          units={units}
          error={(field) => error(`rows.${place}.${field}`)}
          onChange={(next) => onRows(rows.map((one) => (one.id === row.id ? next : one)))}
          onMove={(by) => onRows(movedRow(rows, place, by))}
          onRemove={() => onRemove(row.id)}
        />
      ))}
      {rows.length < MOST_ROWS && (
        <div>
          <Button onClick={() => onRows([...rows, newRow(rows)])}>
            <Plus size={20} aria-hidden="true" /> Add a limit
          </Button>
        </div>
      )}
    </>
  );
}
