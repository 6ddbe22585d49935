"use client";

import { Plus } from "lucide-react";
import { useRouter } from "next/navigation";
import { useState } from "react";
import { SaveBar, useEdited, type Editing, type Save, type SavedAndSaid } from "@/components/saving";
import { Button, Field, form, Panel } from "@/components/ui";
import type { ShopRow } from "@/lib/accept";
import type { UnitPreferences } from "@/lib/units";
import styles from "./criteria.module.css";
import { draftErrors, movedRow, newRow, type ShopDraft } from "./shop-draft";
import { ShopRowFields } from "./shop-row-fields";
import { TryOut, type TriedBead, type TryOn } from "./try-out";

/** The revision is the version; the key is where a new set is found. */
export type SavedShopSet = SavedAndSaid & { readonly key: string };

/**
 * Limits being written: rows of one limit each, tried on a bead of the shop before they are saved as a version.
 * Revision 0 is a set that is not saved yet.
 */
export function ShopEditor({
  tryOn,
  beads,
  units,
  ...editing
}: Omit<Editing<ShopDraft>, "save"> & {
  readonly save: Save<ShopDraft, SavedShopSet>;
  readonly tryOn: TryOn;
  readonly beads: readonly TriedBead[];
  readonly units: UnitPreferences;
}) {
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
  const edited = useEdited({ ...editing, save: saveAndOpen });
  const { content, change, submit } = edited;
  const [asked, setAsked] = useState(false);
  const errors = draftErrors(content);
  const error = (path: string): string | undefined => (asked ? errors.get(path) : undefined);
  const { rows } = content;
  const setRows = (next: readonly ShopRow[]) => change({ rows: next });
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
      <Panel title="What it is called" tone="blue">
        <Field
          label="Title"
          hint="An exercise or a contract, as it stands in the choice: “Stringers, first week”."
          error={error("title") && "Give the limits a title of up to 120 letters."}
        >
          {(ids) => (
            <input
              {...ids}
              value={content.title}
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
              value={content.note}
              onChange={({ target }) => change({ note: target.value })}
            />
          )}
        </Field>
      </Panel>
      {rows.map((row, place) => (
        <ShopRowFields
          key={row.id}
          row={row}
          place={place}
          last={place === rows.length - 1}
          units={units}
          error={(field) => error(`rows.${place}.${field}`)}
          onChange={(next) => setRows(rows.map((one) => (one.id === row.id ? next : one)))}
          onMove={(by) => setRows(movedRow(rows, place, by))}
          onRemove={() => setRows(rows.filter(({ id }) => id !== row.id))}
        />
      ))}
      {rows.length < 100 && (
        <div>
          <Button onClick={() => setRows([...rows, newRow(rows)])}>
            <Plus size={20} aria-hidden="true" /> Add a limit
          </Button>
        </div>
      )}
      {rows.length === 0 && asked && (
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
