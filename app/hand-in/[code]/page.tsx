import type { Metadata } from "next";
import { headers } from "next/headers";
import Link from "next/link";
import { currentUnits } from "@/app/_door/current-units";
import { here, ownOnly } from "@/app/_door/here";
import { ActionForm, HandInForm } from "@/components/course";
import { Header } from "@/components/shell";
import { tooMany } from "@/lib/account";
import { Button, buttonClass, Field, LocalTime, page, Panel } from "@/components/ui";
import { startingSetup } from "@/lib/course";
import { newestBeads, type ListedBead } from "@/lib/find";
import { getGroup, getPerson } from "@/lib/roster";
import { recordSentence } from "@/lib/store";
import { setupRows } from "@/lib/report";
import { handInBeadAction } from "../actions";
import { codeOf, exerciseAsked } from "../code-tries";
import { signedInStudent } from "../signed-in";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Hand in" };

/** What the form asks for itself stands in its fields, not in the line below them. */
const askedAgain = { wireFeedMPerMin: null, volts: null, ctwdMm: null, polarity: null };

interface Props {
  params: Promise<{ code: string }>;
  searchParams: Promise<{ withdrawn?: string }>;
}

/** What the code on the bench opens, on a phone, with or without an account. */
export default async function HandInPage({ params, searchParams }: Props) {
  const code = codeOf((await params).code);
  const { withdrawn } = await searchParams;
  const now = await here();
  const who = signedInStudent(now);
  const taking = await exerciseAsked(now.db, await headers(), code, who.by !== null);
  if ("seconds" in taking) return <Refused said={tooMany("too-many-codes", taking.seconds).message} />;
  if (!taking.ok) return <Refused refusal={taking.issues[0]} />;
  const exercise = taking.value;
  const [group, units, own, offered] = await Promise.all([
    getGroup(now.db, exercise.group.id),
    currentUnits(),
    who.signedInAs ? getPerson(now.db, who.signedInAs) : null,
    who.by ? newestBeads(now.db, { photo: "yes" }, ownOnly(now.actor), { notHandedIn: true }) : [],
  ]);
  const setup = startingSetup(exercise.content);
  return (
    <Shell title={exercise.title} kicker={exercise.group.name}>
      {withdrawn && (
        <p className={page.notice}>Your hand-in was withdrawn. Hand in another bead if you like.</p>
      )}
      {exercise.content.aim && <p className={page.words}>{exercise.content.aim}</p>}
      {exercise.dueAt && (
        <p className={page.note}>
          Due <LocalTime iso={exercise.dueAt} />.
        </p>
      )}
      <HandInForm
        code={exercise.code}
        // Whoever has no account learns no name, unless the exercise says so.
        students={(who.by !== null || exercise.content.namesShown ? (group?.members ?? []) : [])
          // Whoever has an account signs in: strangers are not told that they are in this group.
          .filter(({ hasAccount }) => who.by !== null || !hasAccount)
          .map(({ id, name, mark }) => ({ id, name: mark ? `${name} (${mark})` : name }))}
        signedInAs={own?.name ?? null}
        asked={setup}
        facts={setupRows({ ...setup, ...askedAgain }, units.preferences)}
        units={units.preferences}
      />
      {offered.length > 0 && <OwnBeads code={exercise.code} beads={offered} />}
    </Shell>
  );
}

/** Why nothing can be handed in here, and the way on. */
function Refused({
  refusal,
  said = refusal && recordSentence(refusal),
}: {
  refusal?: Parameters<typeof recordSentence>[0] | undefined;
  said?: string | undefined;
}) {
  return (
    <Shell title="This cannot be handed in here">
      <p className={page.alert} role="alert">
        {said}
      </p>
      <div className={page.buttons}>
        {refusal?.code === "hand-in-needs-account" && (
          <Link className={buttonClass("main", "large")} href="/sign-in">
            Sign in
          </Link>
        )}
        <Link className={buttonClass("plain", "large")} href="/hand-in">
          Another code
        </Link>
      </div>
    </Shell>
  );
}

/** What a signed-in student has photographed already. */
function OwnBeads({ code, beads }: { code: string; beads: readonly ListedBead[] }) {
  return (
    <Panel title="Or hand in a bead you have" level={2}>
      <ActionForm action={handInBeadAction.bind(null, code)} label="Hand in a bead you have">
        <Field label="Bead">
          {(ids) => (
            <select {...ids} name="bead">
              {beads.map(({ id, number, title }) => (
                <option key={id} value={id}>
                  {number} {title}
                </option>
              ))}
            </select>
          )}
        </Field>
        <Field label="Note, if any">{(ids) => <input {...ids} name="note" maxLength={600} />}</Field>
        <Button type="submit">Hand in this bead</Button>
      </ActionForm>
    </Panel>
  );
}

function Shell({ title, kicker, children }: { title: string; kicker?: string; children: React.ReactNode }) {
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.column}`}>
        <div>
          {kicker && <p className={page.note}>{kicker}</p>}
          <h1>{title}</h1>
        </div>
        {children}
      </main>
    </>
  );
}
