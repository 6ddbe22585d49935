import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Header } from "@/components/shell";
import { Field, page, Panel, SaidForm } from "@/components/ui";
import { roleDuties, roleNames } from "@/lib/people";
import { getPerson } from "@/lib/roster";
import { pageFor } from "../_door/here";
import { changeOwnPassphraseAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Your account" };

export default async function MePage() {
  const { actor, db } = await pageFor("bead.read");
  const person = actor.kind === "person" ? await getPerson(db, actor.personId) : null;
  if (!person) notFound();
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.narrow}`}>
        <h1>{person.name}</h1>
        <p>
          {roleNames[person.role]}
          {person.mark ? `, ${person.mark}` : ""}. {roleDuties[person.role]}
        </p>
        <Panel title="Change your passphrase" tone="straw">
          <SaidForm action={changeOwnPassphraseAction} submit="Change passphrase">
            <Field label="Passphrase until now">
              {(ids) => (
                <input {...ids} name="before" type="password" autoComplete="current-password" required />
              )}
            </Field>
            <Field
              label="New passphrase"
              hint="At least 10 characters. You sign in again with it everywhere."
            >
              {(ids) => (
                <input {...ids} name="passphrase" type="password" autoComplete="new-password" required />
              )}
            </Field>
          </SaidForm>
        </Panel>
      </main>
    </>
  );
}
