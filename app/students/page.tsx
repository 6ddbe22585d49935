import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import { Header } from "@/components/shell";
import { page } from "@/components/ui";
import { personIdOf } from "@/lib/people";
import { listHandIns } from "@/lib/classroom";
import { listGroups, listPeople } from "@/lib/roster";
import { pageFor } from "../_door/here";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Students" };

export default async function StudentsPage() {
  const now = await pageFor("bead.read");
  const own = personIdOf(now.actor);
  if (!now.may("course.read") && own) redirect(`/students/${own}`);
  await pageFor("course.read");
  const [students, handIns, groups] = await Promise.all([
    listPeople(now.db, { holds: "welder" }),
    listHandIns(now.db),
    listGroups(now.db),
  ]);
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div>
          <p className={page.trail}>
            <Link href="/groups">All groups</Link>
          </p>
          <h1>Students</h1>
        </div>
        {students.length === 0 && <p>Nobody yet. Add students on the page of their group.</p>}
        <ul className={page.list}>
          {students.map(({ id, name, mark }) => (
            <li key={id} className={page.item}>
              <Link className={page.link} href={`/students/${id}`}>
                {name}
                {mark && ` (${mark})`}
              </Link>
              <span className={page.note}>
                {groups
                  .filter(({ members }) => members.some((member) => member.id === id))
                  .map((group) => `${group.name} · `)}
                {handIns.filter(({ personId }) => personId === id).length} handed in
              </span>
            </li>
          ))}
        </ul>
      </main>
    </>
  );
}
