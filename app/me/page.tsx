import type { Metadata } from "next";
import { headers } from "next/headers";
import { notFound } from "next/navigation";
import { Header } from "@/components/shell";
import { Field, page, Panel, SaidForm } from "@/components/ui";
import { listSessions } from "@/lib/account";
import { dayText } from "@/lib/report";
import { roleDuties, roleNames } from "@/lib/people";
import { getPerson } from "@/lib/roster";
import { pageFor } from "../_door/here";
import { changeOwnPassphraseAction, endSessionAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Your account" };

export default async function MePage() {
  const { actor, db } = await pageFor("bead.read");
  const person = actor.kind === "person" ? await getPerson(db, actor.personId) : null;
  if (!person) notFound();
  const sessions = person.userId ? await listSessions(db, person.userId, await headers()) : [];
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
        <Panel title="Where you are signed in" tone="blue">
          <ul>
            {sessions.map(({ id, isThis, createdAt, address, browser }) => (
              <li key={id}>
                <strong>{isThis ? "Here" : (address ?? "Unknown address")}</strong>, since{" "}
                {dayText(createdAt)}
                {browser ? `: ${browser.slice(0, 120)}` : ""}
                {!isThis && (
                  <SaidForm action={endSessionAction.bind(null, id)} submit="End this one" tone="danger" />
                )}
              </li>
            ))}
          </ul>
        </Panel>
      </main>
    </>
  );
}
