"use client";

import { Trash2 } from "lucide-react";
import Link from "next/link";
import { useTransition } from "react";
import { Field, SaidForm, type SaidAction } from "@/components/ui";
import styles from "./saved-filters.module.css";

export interface SavedFilterLink {
  readonly id: string;
  readonly name: string;
  readonly href: string;
}

/** Searches kept under a name: one tap to each; whoever may keeps the present one or throws one away. */
export function SavedFilters({
  saved,
  onSave,
  onDelete,
}: {
  saved: readonly SavedFilterLink[];
  /** null: nothing is asked for now, or this person may not keep filters. */
  onSave: SaidAction | null;
  onDelete: ((id: string) => Promise<void>) | null;
}) {
  const [pending, start] = useTransition();
  if (saved.length === 0 && onSave === null) return null;
  return (
    <div className={styles.saved}>
      {saved.length > 0 && (
        <ul className={styles.list} aria-label="Saved filters">
          {saved.map(({ id, name, href }) => (
            <li key={id} className={styles.one}>
              <Link href={href}>{name}</Link>
              {onDelete && (
                <button
                  type="button"
                  disabled={pending}
                  aria-label={`Delete the saved filter ${name}`}
                  onClick={() => {
                    if (window.confirm(`Delete the saved filter "${name}"? No bead is touched.`))
                      start(() => onDelete(id));
                  }}
                >
                  <Trash2 size={18} aria-hidden="true" />
                </button>
              )}
            </li>
          ))}
        </ul>
      )}
      {onSave && (
        <details className={styles.keep}>
          <summary>Keep this filter under a name</summary>
          <SaidForm action={onSave} submit="Keep filter" tone="plain">
            <Field label="Name of the filter">
              {({ "aria-invalid": _never, ...ids }) => <input {...ids} name="name" maxLength={80} required />}
            </Field>
          </SaidForm>
        </details>
      )}
    </div>
  );
}
