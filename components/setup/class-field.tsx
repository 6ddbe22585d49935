"use client";

import { useState } from "react";
import { fieldLabel } from "@/lib/setup";
import { electrodeClass, electrodeClassesFor, electrodeFamilies, type ElectrodeClass } from "@/lib/trade";
import { FieldNotes } from "./field-notes";
import styles from "./fields.module.css";
import { controlId, findingsAt, notesId, useForm } from "./form-context";
import { familyWords } from "./words";

const OTHER = "other";

/**
 * The classification off the spool or the rod: picked from the list of the chosen process, or typed. What is typed is
 * kept as typed; if the table knows it, the form says how it read it.
 */
export function ClassField() {
  const { prefix, setup, set, findings } = useForm();
  const id = controlId(prefix, "electrodeClass");
  const name = setup.electrodeClass;
  const rows = listed(setup.process);
  const inList = name === null || rows.some((row) => row.id === name);
  const [wantsToType, setWantsToType] = useState(false);
  const typing = wantsToType || !inList;
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {fieldLabel("electrodeClass")}
      </label>
      <select
        id={id}
        className={name === null && !typing ? styles.selectUnknown : styles.select}
        value={typing ? OTHER : (name ?? "")}
        aria-describedby={
          findingsAt(findings, "electrodeClass").length > 0 ? notesId(prefix, "electrodeClass") : undefined
        }
        onChange={({ target: { value } }) => {
          setWantsToType(value === OTHER);
          if (value !== OTHER) set({ electrodeClass: value === "" ? null : value });
        }}
      >
        <option value="">Don’t know</option>
        <option value={OTHER}>Type it as it stands on the spool…</option>
        {families(rows).map(([family, members]) => (
          <optgroup key={family} label={familyWords[family]}>
            {members.map((row) => (
              <option key={row.process + row.id} value={row.id}>
                {row.id}
              </option>
            ))}
          </optgroup>
        ))}
      </select>
      {typing && <TypedClass />}
      <FieldNotes field="electrodeClass" />
    </div>
  );
}

function TypedClass() {
  const { prefix, setup, set } = useForm();
  const id = `${controlId(prefix, "electrodeClass")}-typed`;
  const known = setup.electrodeClass === null ? null : electrodeClass(setup.electrodeClass, setup.process);
  return (
    <>
      <label htmlFor={id} className="visually-hidden">
        Electrode class as it stands on the spool
      </label>
      <input
        id={id}
        type="text"
        maxLength={40}
        autoCapitalize="characters"
        autoComplete="off"
        spellCheck={false}
        placeholder="E71T-11"
        value={setup.electrodeClass ?? ""}
        aria-describedby={`${id}-hint`}
        onChange={({ target: { value } }) => set({ electrodeClass: value.trim() === "" ? null : value })}
      />
      <p id={`${id}-hint`} className={styles.hint} aria-live="polite">
        {setup.electrodeClass === null
          ? "Copy the class off the spool or box."
          : known
            ? `Read as ${known.id}.`
            : "Not in our table: kept as typed, and not checked."}
      </p>
    </>
  );
}

/** The list for a process; without one, one line for wire and rod that share a name. */
function listed(process: Parameters<typeof electrodeClassesFor>[0]): readonly ElectrodeClass[] {
  const rows = electrodeClassesFor(process);
  return rows.filter((row, at) => rows.findIndex(({ id }) => id === row.id) === at);
}

function families(rows: readonly ElectrodeClass[]) {
  const present = electrodeFamilies.filter((family) => rows.some((row) => row.family === family));
  return present.map((family) => [family, rows.filter((row) => row.family === family)] as const);
}
