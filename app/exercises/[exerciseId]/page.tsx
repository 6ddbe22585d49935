import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor } from "@/app/_door/here";
import { ActionButton, ClassView, HandInState, QrCode } from "@/components/course";
import { Header } from "@/components/shell";
import { buttonClass, LocalTime, page, Panel } from "@/components/ui";
import { listCriteria } from "@/lib/accept";
import { classCounts, shareWords, startingSetup, type ClassBead } from "@/lib/course";
import {
  getExercise,
  listHandIns,
  waitingFor,
  type ExerciseRecord,
  type HandInRecord,
} from "@/lib/classroom";
import { personIdOf } from "@/lib/people";
import { getGroup, type GroupRecord } from "@/lib/roster";
import { shopSetsToChoose } from "@/lib/shop";
import { setupRows } from "@/lib/report";
import { copyExerciseAction, openExerciseAction, renewCodeAction } from "../actions";
import { staleLine } from "../../filter-questions";
import { classBeads } from "../class-beads";
import { handInAddress } from "../hand-in-address";
import { newerVersion } from "@/components/criteria";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Exercise" };

export default async function ExercisePage({ params }: { params: Promise<{ exerciseId: string }> }) {
  const { exerciseId } = await params;
  const now = await pageFor("course.read");
  const exercise = await getExercise(now.db, exerciseId);
  if (!exercise) notFound();
  const [group, handIns, units] = await Promise.all([
    getGroup(now.db, exercise.group.id),
    listHandIns(now.db, { exerciseId }),
    currentUnits(),
  ]);
  const { beads, stale } = await classBeads(now.db, handIns);
  const sets = listCriteria(await shopSetsToChoose(now.db, [exercise.content.criteriaId]));
  const criteria = sets.find(({ id }) => id === exercise.content.criteriaId);
  const [first] = waitingFor(handIns, personIdOf(now.actor));
  const newer = newerVersion(exercise.content.criteriaId, sets);
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div className={page.top}>
          <div>
            <p className={page.trail}>
              <Link href={`/groups/${exercise.group.id}`}>{exercise.group.name}</Link>
            </p>
            <h1>{exercise.title}</h1>
          </div>
          <Ways exercise={exercise} first={first?.id ?? null} />
        </div>
        {stale > 0 && <p className={page.notice}>{staleLine(stale)}</p>}
        <div className={page.columns}>
          <Panel title="What is asked" tone="straw">
            {exercise.content.aim && <p className={page.words}>{exercise.content.aim}</p>}
            <table className={page.plainTable}>
              <tbody>
                {setupRows(startingSetup(exercise.content), units.preferences).map(({ label, value }) => (
                  <tr key={label}>
                    <th scope="row">{label}</th>
                    <td>{value}</td>
                  </tr>
                ))}
                <tr>
                  <th scope="row">Judged by</th>
                  <td>
                    {criteria ? `${criteria.title}, ${criteria.edition}` : "not judged"}
                    {newer &&
                      `. There is a version ${newer.shop?.version} since; beads handed in keep theirs.`}
                  </td>
                </tr>
                {exercise.content.rubric.map(({ id, title, weight }) => (
                  <tr key={id}>
                    <th scope="row">{title}</th>
                    <td>weight {weight}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </Panel>
          <HandingIn exercise={exercise} />
          <WhoHandedIn group={group} handIns={handIns} beads={beads} />
        </div>
        <ClassView
          title="This exercise"
          counts={classCounts(beads)}
          studentNames={Object.fromEntries(
            handIns.map(({ studentKey, student }) => [studentKey, student ?? "name removed"]),
          )}
        />
      </main>
    </>
  );
}

/** What can be done with the exercise; `first`: the oldest hand-in that waits. */
function Ways({ exercise, first }: { exercise: ExerciseRecord; first: string | null }) {
  return (
    <div className={page.buttons}>
      {first && (
        <Link className={buttonClass("main")} href={`/feedback/${first}?row=exercise`}>
          Give feedback
        </Link>
      )}
      <Link className={buttonClass()} href={`/groups/${exercise.group.id}/grades`}>
        Gradebook
      </Link>
      <ActionButton className={buttonClass()} action={copyExerciseAction.bind(null, exercise.id)}>
        Copy
      </ActionButton>
      <Link className={buttonClass()} href={`/exercises/${exercise.id}/edit`}>
        Change
      </Link>
      <Link className={buttonClass()} href={`/exercises/${exercise.id}/notice`}>
        Bench notice
      </Link>
      <Link className={buttonClass()} href={`/exercises/${exercise.id}/class`}>
        Page for the wall
      </Link>
    </div>
  );
}

async function HandingIn({ exercise }: { exercise: ExerciseRecord }) {
  const { address, onlyHere } = await handInAddress(exercise.code);
  return (
    <Panel title="Handing in" tone={exercise.open ? "ok" : "danger"}>
      <p className={page.code}>{exercise.code}</p>
      <QrCode address={address} side={220} label={`Hand-in address ${address}`} />
      <a className={page.address} href={address}>
        {address}
      </a>
      {onlyHere && (
        <p className={page.notice}>
          This Toeline answers on this machine only, so a phone cannot reach the address. It can once accounts
          are set up and Toeline is served to the network.
        </p>
      )}
      <p>
        {exercise.open ? "Takes beads now" : "Closed"}
        {exercise.withoutAccount ? ", without an account." : ", from people who are signed in."}
        {exercise.dueAt && (
          <>
            {" "}
            Due <LocalTime iso={exercise.dueAt} zone />.
          </>
        )}{" "}
        The code leads here until <LocalTime iso={exercise.codeUntil} />; a new one ends it at once.
      </p>
      <div className={page.buttons}>
        <ActionButton
          className={buttonClass()}
          action={openExerciseAction.bind(null, exercise.id, !exercise.open)}
        >
          {exercise.open ? "Close" : "Open again"}
        </ActionButton>
        <ActionButton className={buttonClass()} action={renewCodeAction.bind(null, exercise.id)}>
          New code
        </ActionButton>
      </div>
    </Panel>
  );
}

function WhoHandedIn({
  group,
  handIns,
  beads,
}: {
  group: GroupRecord | null;
  handIns: readonly HandInRecord[];
  beads: readonly ClassBead[];
}) {
  const members = group?.members ?? [];
  const missing = members.filter(({ id }) => !handIns.some(({ personId }) => personId === id));
  return (
    <Panel title="Who handed in" tone="purple">
      <p>
        {members.length - missing.length} of {members.length} in the group have handed in.
      </p>
      <ul className={page.list}>
        {handIns.map((handIn) => (
          <HandInState
            key={handIn.id}
            handIn={handIn}
            verdict={beads.find(({ handInId }) => handInId === handIn.id)?.verdict ?? null}
            score={shareWords(beads.find(({ handInId }) => handInId === handIn.id)?.score ?? null)}
          />
        ))}
      </ul>
      {missing.length > 0 && <p>Not yet: {missing.map(({ name }) => name).join(", ")}.</p>}
    </Panel>
  );
}
