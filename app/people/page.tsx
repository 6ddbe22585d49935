import type { Metadata } from "next";
import { PersonFields, PersonPanel } from "@/components/people";
import { Header } from "@/components/shell";
import { page, Panel, SaidForm } from "@/components/ui";
import { accountsRequired } from "@/lib/account";
import { heldRoleNames, roleDuties, roleNames, roles } from "@/lib/people";
import { listPeople } from "@/lib/roster";
import { pageFor } from "../_door/here";
import {
  addPersonAction,
  changePersonAction,
  closeAccountAction,
  lookForNameAction,
  openAccountAction,
  removePersonAction,
  takeOffSecondFactorAction,
} from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "People" };

export default async function PeoplePage() {
  const now = await pageFor("people.read");
  const people = await listPeople(now.db);
  const manages = now.may("people.manage");
  return (
    <>
      <Header />
      <main className={page.page}>
        <h1>People</h1>
        {!accountsRequired() && (
          <p className={page.note}>
            This Toeline answers on this machine only and asks nobody to sign in. Accounts are needed to sign
            inspection records, and before it may be reached from the network.
          </p>
        )}
        <div className={page.columns}>
          {people.map((person) =>
            manages ? (
              <PersonPanel
                key={person.id}
                person={person}
                change={changePersonAction.bind(null, person.id)}
                openAccount={openAccountAction.bind(null, person.id)}
                closeAccount={closeAccountAction.bind(null, person.id)}
                takeOffSecondFactor={takeOffSecondFactorAction.bind(null, person.id)}
                remove={removePersonAction.bind(null, person.id)}
                lookForName={lookForNameAction.bind(null, person.id)}
              />
            ) : (
              <Panel key={person.id} title={person.name ?? "Removed person"}>
                <p>{[heldRoleNames(person), person.mark].filter(Boolean).join(" · ")}</p>
              </Panel>
            ),
          )}
        </div>
        {manages && (
          <Panel title="Add a person" tone="straw">
            <SaidForm action={addPersonAction} submit="Add">
              <PersonFields />
            </SaidForm>
          </Panel>
        )}
        <Panel title="What each role may do">
          <p>Somebody with several roles may do what any of them may.</p>
          <dl>
            {roles.map((role) => (
              <div key={role}>
                <dt>
                  <strong>{roleNames[role]}</strong>
                </dt>
                <dd>{roleDuties[role]}</dd>
              </div>
            ))}
          </dl>
        </Panel>
      </main>
    </>
  );
}
