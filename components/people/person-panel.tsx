"use client";

import { Field, form, Panel, SaidForm, type PanelTone, type Said, type SaidAction } from "@/components/ui";
import type { Answer } from "@/lib/base";
import { heldRoleNames, holds, signs, type HeldRoles } from "@/lib/people";
import { NamePlaces, type ShownPlace } from "./name-places";
import { PersonFields } from "./person-fields";
import styles from "./person-panel.module.css";

export interface ShownPerson extends HeldRoles {
  readonly id: string;
  readonly name: string | null;
  readonly mark: string | null;
  readonly userId: string | null;
}

const toneOf = (person: HeldRoles): PanelTone =>
  signs(person) ? "blue" : holds(person, "owner") || holds(person, "instructor") ? "purple" : "plain";

/** One person: what they are, and behind a fold each, how to change it, their account, and their removal. */
export function PersonPanel({
  person,
  change,
  openAccount,
  closeAccount,
  takeOffSecondFactor,
  remove,
  lookForName,
}: {
  person: ShownPerson;
  change: SaidAction;
  openAccount: SaidAction;
  closeAccount: () => Promise<Answer<Said>>;
  takeOffSecondFactor: () => Promise<Answer<Said>>;
  remove: SaidAction;
  lookForName: () => Promise<readonly ShownPlace[] | null>;
}) {
  const { name, mark, userId } = person;
  return (
    <Panel title={name ?? "Removed person"} tone={toneOf(person)}>
      <p className={styles.facts}>
        {[heldRoleNames(person), mark, userId ? "can sign in" : "no account"].filter(Boolean).join(" · ")}
      </p>
      <details className={styles.fold}>
        <summary>Change</summary>
        <SaidForm action={change} submit="Save">
          <PersonFields start={person} />
        </SaidForm>
      </details>
      <details className={styles.fold}>
        <summary>{userId ? "Passphrase forgotten" : "Open an account"}</summary>
        <p>
          You get a one-time code to give to them. With it they choose a passphrase that you do not know
          {signs(person) ? "; their signing key is made with it, and one from before ends" : ""}.
        </p>
        <SaidForm action={openAccount} submit={userId ? "Give a one-time code" : "Open account"}>
          {!userId && (
            <Field label="Sign-in name" hint="2 to 40 letters, digits, dots or underscores.">
              {(ids) => (
                <input {...ids} name="signInName" autoComplete="off" autoCapitalize="none" required />
              )}
            </Field>
          )}
        </SaidForm>
        {userId && (
          <SaidForm action={takeOffSecondFactor} submit="Phone lost: ask for no number" tone="plain" />
        )}
        {userId && <SaidForm action={closeAccount} submit="Close the account" tone="danger" />}
      </details>
      <details className={styles.fold}>
        <summary>Remove</summary>
        <p>
          Their name, account, group memberships and words are erased for good. Beads, measurements and signed
          records stay, under their identification{mark ? ` ${mark}` : ""}.
        </p>
        <p>Titles, notes and remarks stay as they were written: look first whether the name stands in one.</p>
        <NamePlaces look={lookForName} />
        <SaidForm action={remove} submit={`Remove ${name ?? "this person"}`} tone="danger">
          <label className={form.check}>
            <input type="checkbox" name="leave" value="yes" /> Leave the name where it stands in other texts
          </label>
        </SaidForm>
      </details>
    </Panel>
  );
}
