import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { classBeads } from "@/app/exercises/class-beads";
import { staleLine } from "@/app/filter-questions";
import { pageFor } from "@/app/_door/here";
import { ActionButton, ActionForm, ClassView } from "@/components/course";
import { Header } from "@/components/shell";
import { Button, buttonClass, Field, LocalTime, page, Panel, PersonOptions } from "@/components/ui";
import { classCounts } from "@/lib/course";
import { listExercises, listHandIns, waitingFor } from "@/lib/classroom";
import { personIdOf } from "@/lib/people";
import { getGroup, listPeople, type GroupRecord, type PersonRecord } from "@/lib/roster";
import {
  addRosterAction,
  addStudentAction,
  closeGroupAction,
  joinGroupAction,
  leaveGroupAction,
} from "../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Group" };

export default async function GroupPage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params;
  const now = await pageFor("course.read");
  const group = await getGroup(now.db, groupId);
  if (!group) notFound();
  const [exercises, handIns, people] = await Promise.all([
    listExercises(now.db, { groupId }),
    listHandIns(now.db, { groupId }),
    listPeople(now.db, { holds: "welder" }),
  ]);
  const { beads, stale } = await classBeads(now.db, handIns);
  const waiting = waitingFor(handIns, personIdOf(now.actor));
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div className={page.top}>
          <div>
            <p className={page.trail}>
              <Link href="/groups">All groups</Link>
            </p>
            <h1>{group.name}</h1>
            {group.closedAt && (
              <p>
                Closed <LocalTime iso={group.closedAt} only="day" />: it takes no more beads.
              </p>
            )}
          </div>
          <Ways group={group} first={waiting[0]?.id ?? null} waiting={waiting.length} />
        </div>
        {stale > 0 && <p className={page.notice}>{staleLine(stale)}</p>}
        <div className={page.columns}>
          <Panel title="Exercises" tone="bronze">
            {exercises.length === 0 && <p>None yet.</p>}
            <ul className={page.list}>
              {exercises.map((exercise) => (
                <li key={exercise.id} className={page.item}>
                  <h3>
                    <Link href={`/exercises/${exercise.id}`}>{exercise.title}</Link>
                  </h3>
                  <span className={page.note}>
                    {exercise.handIns} handed in
                    {exercise.dueAt && (
                      <>
                        {" · due "}
                        <LocalTime iso={exercise.dueAt} />
                      </>
                    )}
                    {!exercise.open && " · closed"}
                  </span>
                </li>
              ))}
            </ul>
          </Panel>
          <Students group={group} people={people} givesRoles={now.may("people.manage")} />
        </div>
        <ClassView
          title="The class, all exercises"
          counts={classCounts(beads)}
          studentNames={Object.fromEntries(
            handIns.map(({ studentKey, student }) => [studentKey, student ?? "name removed"]),
          )}
        />
      </main>
    </>
  );
}

/** What can be done with the group; `first`: the oldest hand-in that waits. */
function Ways({ group, first, waiting }: { group: GroupRecord; first: string | null; waiting: number }) {
  return (
    <div className={page.buttons}>
      {first && (
        <Link className={buttonClass("main")} href={`/feedback/${first}?row=group`}>
          Give feedback, {waiting} waiting
        </Link>
      )}
      <Link className={buttonClass()} href={`/groups/${group.id}/grades`}>
        Gradebook
      </Link>
      <Link className={buttonClass(first ? "plain" : "main")} href={`/exercises/new?group=${group.id}`}>
        New exercise
      </Link>
      <ActionButton
        className={buttonClass()}
        action={closeGroupAction.bind(null, group.id, group.closedAt === null)}
      >
        {group.closedAt ? "Open again" : "Close the group"}
      </ActionButton>
    </div>
  );
}

function Students({
  group,
  people,
  givesRoles,
}: {
  group: GroupRecord;
  people: readonly PersonRecord[];
  givesRoles: boolean;
}) {
  const others = people.filter(({ id }) => !group.members.some((member) => member.id === id));
  return (
    <Panel title="Students" tone="purple">
      {group.members.length === 0 && <p>Nobody yet. Students need no account to hand in.</p>}
      <ul className={page.list}>
        {group.members.map((member) => (
          <li key={member.id} className={page.item}>
            <Link className={page.link} href={`/students/${member.id}`}>
              {member.name}
              {member.mark && ` (${member.mark})`}
            </Link>
            <ActionButton
              className={buttonClass()}
              sure={`Take ${member.name} out of the group?`}
              action={leaveGroupAction.bind(null, group.id, member.id)}
            >
              Take out
            </ActionButton>
          </li>
        ))}
      </ul>
      <ActionForm
        action={addStudentAction.bind(null, group.id)}
        className={page.fields}
        label="Add a student"
      >
        <Field label="Name">
          {(ids) => <input {...ids} name="name" maxLength={120} required autoComplete="off" />}
        </Field>
        <Field label="Identification, if any">
          {(ids) => <input {...ids} name="mark" maxLength={20} placeholder="W-07" autoComplete="off" />}
        </Field>
        <Button type="submit">Add student</Button>
      </ActionForm>
      <details className={page.details}>
        <summary>Paste a list</summary>
        <ActionForm action={addRosterAction.bind(null, group.id)} label="Paste a list of students">
          <Field
            label="One student a line"
            hint={`Name, then a tab or a semicolon and the identification if there is one. ${givesRoles ? "Somebody who is more than a student has their roles behind it: “Imke Tal; W-07; instructor + welder”. " : ""}Who is in the group already stays as they are.`}
          >
            {(ids) => <textarea {...ids} name="roster" rows={6} required maxLength={20_000} />}
          </Field>
          <Button type="submit">Add them all</Button>
        </ActionForm>
      </details>
      {others.length > 0 && (
        <ActionForm
          action={joinGroupAction.bind(null, group.id)}
          className={page.fields}
          label="Add somebody known"
        >
          <Field label="Already known">
            {(ids) => (
              <select {...ids} name="person">
                <PersonOptions people={others} />
              </select>
            )}
          </Field>
          <Button type="submit">Put into the group</Button>
        </ActionForm>
      )}
    </Panel>
  );
}
