import type { Metadata } from "next";
import { headers } from "next/headers";
import { notFound } from "next/navigation";
import { Header, NoticeSwitch } from "@/components/shell";
import { Field, LocalTime, page, Panel, SaidForm } from "@/components/ui";
import { listSessions, secondFactorState } from "@/lib/account";
import { hasPersonKey } from "@/lib/keys";
import { heldRoleNames, heldRoles, holds, reach, roleDuties, roleNames, signs } from "@/lib/people";
import { getPerson, type PersonRecord } from "@/lib/roster";
import { pageFor } from "../_door/here";
import { QrCode } from "@/components/course";
import {
  beginSecondFactorAction,
  changeOwnPassphraseAction,
  confirmSecondFactorAction,
  endSecondFactorAction,
  endSessionAction,
} from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Your account" };

export default async function MePage() {
  const { actor, db } = await pageFor("bead.read");
  const person = actor.kind === "person" ? await getPerson(db, actor.personId) : null;
  if (!person) notFound();
  const keyless = signs(person) && !(await hasPersonKey(db, person.id));
  const sessions = person.userId ? await listSessions(db, person.userId, await headers()) : [];
  const factor = person.userId
    ? await secondFactorState(db, person.userId, person.name ?? roleNames[person.role])
    : null;
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.narrow}`}>
        <h1>{person.name}</h1>
        <Duties person={person} />
        <Panel title="Change your passphrase" tone="straw">
          {keyless && (
            <p>
              You sign inspections and have no key to do it with yet. It begins with the passphrase you choose
              here.
            </p>
          )}
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
        {factor && <SecondFactorPanel factor={factor} />}
        {reach(actor, "feedback.read") !== null && (
          <Panel title="Notices on this device" tone="plain">
            <p>
              {reach(actor, "feedback.read") === "all" && "When somebody hands in. "}
              {holds(person, "welder") && "When feedback comes back to you."}
            </p>
            <NoticeSwitch personId={person.id} />
          </Panel>
        )}
        <Panel title="Where you are signed in" tone="blue">
          <ul>
            {sessions.map(({ id, isThis, createdAt, address, browser }) => (
              <li key={id}>
                <strong>{isThis ? "Here" : (address ?? "Unknown address")}</strong>, since{" "}
                <LocalTime iso={createdAt} only="day" />
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

/** What they are here, and what each of their roles may do. */
function Duties({ person }: { person: PersonRecord }) {
  const { mark, also, role } = person;
  if (also.length === 0)
    return (
      <p>
        {roleNames[role]}
        {mark ? `, ${mark}` : ""}. {roleDuties[role]}
      </p>
    );
  return (
    <Panel title={heldRoleNames(person)}>
      <p>{mark ? `Identification ${mark}. ` : ""}You may do what any of these roles may.</p>
      <ul>
        {heldRoles(person).map((one) => (
          <li key={one}>
            <strong>{roleNames[one]}</strong>: {roleDuties[one]}
          </li>
        ))}
      </ul>
    </Panel>
  );
}

type Factor = Awaited<ReturnType<typeof secondFactorState>>;

/** A number from the phone beside the passphrase: off, begun, or on. */
function SecondFactorPanel({ factor: { on, toRead, recoveryLeft } }: { factor: Factor }) {
  if (on)
    return (
      <Panel title="Number from your phone: asked for" tone="ok">
        <p>
          Signing in asks for your passphrase and a number from your phone. Recovery codes left:{" "}
          {recoveryLeft}.
        </p>
        <SaidForm action={endSecondFactorAction} submit="Ask for it no longer" tone="danger">
          <Passphrase />
          <NumberField label="Number from your phone, or a recovery code" />
        </SaidForm>
      </Panel>
    );
  return (
    <Panel title="Number from your phone: not asked for" tone="purple">
      <p>
        Whoever learns your passphrase opens your account. With this they would need your phone as well: an
        authenticator on it shows a number that changes each half minute.
      </p>
      {toRead && (
        <>
          <p>Read this with the authenticator, or type the key into it, then type the number it shows:</p>
          <QrCode address={toRead.address} side={220} label="Key for your authenticator" />
          <p className={page.mono}>{toRead.key}</p>
          <SaidForm action={confirmSecondFactorAction} submit="Ask for it from now on">
            <Passphrase />
            <NumberField label="Number from your phone" />
          </SaidForm>
        </>
      )}
      <SaidForm
        action={beginSecondFactorAction}
        submit={toRead ? "Begin anew" : "Begin"}
        tone={toRead ? "plain" : "main"}
      >
        <Passphrase />
      </SaidForm>
    </Panel>
  );
}

function Passphrase() {
  return (
    <Field label="Your passphrase">
      {(ids) => <input {...ids} name="passphrase" type="password" autoComplete="current-password" required />}
    </Field>
  );
}

function NumberField({ label }: { label: string }) {
  return (
    <Field label={label}>
      {(ids) => <input {...ids} name="number" autoComplete="one-time-code" maxLength={40} required />}
    </Field>
  );
}
