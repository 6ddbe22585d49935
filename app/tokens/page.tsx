import type { Metadata } from "next";
import { Header } from "@/components/shell";
import { Field, form, LocalTime, page, Panel, SaidForm } from "@/components/ui";
import { listTokens } from "@/lib/account";
import { reach, scopeNames, scopes, scopeOfDeed, deeds, type Actor, type Scope } from "@/lib/people";
import { getPerson, listPeople } from "@/lib/roster";
import { pageFor } from "../_door/here";
import { endTokenAction, makeTokenAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Tokens" };

/** A token for programs: whoever holds it reaches the HTTP API as its person, as far as its scopes go. */
export default async function TokensPage() {
  const now = await pageFor("token.manage");
  const owners =
    now.actor.kind === "person"
      ? [await getPerson(now.db, now.actor.personId)].filter((one) => one !== null)
      : (await listPeople(now.db)).filter(({ userId }) => userId !== null);
  const tokens = await Promise.all(
    owners.map(async (person) => ({
      person,
      tokens: person.userId ? await listTokens(now.db, person.userId) : [],
    })),
  );
  return (
    <>
      <Header />
      <main className={page.page}>
        <h1>Tokens</h1>
        <p className={page.note}>
          For programs that read or write over HTTP: send <code>authorization: Bearer …</code>. What there is
          stands in <a href="/api/openapi.json">the API description</a>. A token never signs a record.
        </p>
        {tokens.map(({ person, tokens: own }) => (
          <Panel key={person.id} title={person.name ?? ""}>
            {own.length === 0 && <p>No token yet.</p>}
            <ul>
              {own.map((token) => (
                <li key={token.id}>
                  <strong>{token.name}</strong> <span className={page.mono}>{token.start}…</span>,{" "}
                  {token.scopes.map((scope) => scopeNames[scope]).join("; ")}
                  {token.expiresAt && (
                    <>
                      , until <LocalTime iso={token.expiresAt} />
                    </>
                  )}
                  <SaidForm
                    action={endTokenAction.bind(null, person.id, token.id)}
                    submit={`End ${token.name}`}
                    tone="danger"
                  />
                </li>
              ))}
            </ul>
            <details>
              <summary>New token</summary>
              <SaidForm action={makeTokenAction.bind(null, person.id)} submit="Make token">
                <Field label="Name" hint="What will use it.">
                  {(ids) => <input {...ids} name="name" maxLength={32} required />}
                </Field>
                <fieldset>
                  <legend>It may</legend>
                  {grantable({ ...person, kind: "person", personId: person.id, scopes: null }).map(
                    (scope) => (
                      <label key={scope} className={form.check}>
                        <input type="checkbox" name="scopes" value={scope} /> {scopeNames[scope]}
                      </label>
                    ),
                  )}
                </fieldset>
                <Field label="Days it holds" hint="Empty: until you end it.">
                  {(ids) => <input {...ids} name="days" inputMode="numeric" pattern="[0-9]*" />}
                </Field>
              </SaidForm>
            </details>
          </Panel>
        ))}
        {tokens.length === 0 && <p>Tokens belong to people with an account. Open one under People first.</p>}
      </main>
    </>
  );
}

/** Scopes that would let this person's token do anything at all. */
function grantable(actor: Actor): readonly Scope[] {
  return scopes.filter((scope) =>
    deeds.some((deed) => scopeOfDeed[deed] === scope && reach(actor, deed) !== null),
  );
}
