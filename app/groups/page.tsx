import type { Metadata } from "next";
import Link from "next/link";
import { ActionForm } from "@/components/course";
import { Header } from "@/components/shell";
import { Button, buttonClass, Field, page, Panel } from "@/components/ui";
import { listHandIns, waitingFor } from "@/lib/classroom";
import { personIdOf } from "@/lib/people";
import { listGroups } from "@/lib/roster";
import { pageFor } from "../_door/here";
import { createGroupAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Groups" };

export default async function GroupsPage() {
  const now = await pageFor("course.read");
  const [groups, handIns] = await Promise.all([listGroups(now.db), listHandIns(now.db)]);
  const waiting = waitingFor(handIns, personIdOf(now.actor)).length;
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div className={page.top}>
          <div>
            <h1>Groups</h1>
            <p>{groups.length === 0 ? "No group yet." : `${groups.length} in all.`}</p>
          </div>
          <div className={page.buttons}>
            <Link className={buttonClass(waiting > 0 ? "main" : "plain")} href="/feedback">
              {waiting === 0 ? "Nothing waits for feedback" : `${waiting} waiting for feedback`}
            </Link>
            <Link className={buttonClass()} href="/feedback/phrases">
              Quick remarks
            </Link>
          </div>
        </div>
        <ul className={page.list}>
          {groups.map((group) => (
            <li key={group.id} className={page.item}>
              <h3>
                <Link href={`/groups/${group.id}`}>{group.name}</Link>
              </h3>
              <span className={page.note}>
                {plural(group.members.length, "student")} · {plural(group.exercises, "exercise")}
                {group.closedAt && " · closed"}
              </span>
            </li>
          ))}
        </ul>
        <Panel title="New group" tone="straw">
          <ActionForm action={createGroupAction} className={page.fields} label="New group">
            <Field label="Name of the group">
              {(ids) => <input {...ids} name="name" maxLength={80} required autoComplete="off" />}
            </Field>
            <Button type="submit" tone="main">
              Make the group
            </Button>
          </ActionForm>
        </Panel>
      </main>
    </>
  );
}

const plural = (count: number, word: string) => `${count} ${word}${count === 1 ? "" : "s"}`;
