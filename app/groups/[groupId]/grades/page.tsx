import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { pageFor } from "@/app/_door/here";
import { GradeSheet, LineMeans } from "@/components/course";
import { PrintButton } from "@/components/report";
import { Header } from "@/components/shell";
import { buttonClass, page } from "@/components/ui";
import { classGrades } from "../../class-grades";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Gradebook" };

/** Students by exercises: what was handed in, how far its answer is, and its score. */
export default async function GradesPage({ params }: { params: Promise<{ groupId: string }> }) {
  const { groupId } = await params;
  const now = await pageFor("course.read");
  const grades = await classGrades(now.db, groupId);
  if (!grades) notFound();
  const { group, exercises, students, book } = grades;
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div className={page.top}>
          <div>
            <p className={page.trail}>
              <Link href={`/groups/${group.id}`}>{group.name}</Link>
            </p>
            <h1>Gradebook</h1>
            <p>The score is that of the newest attempt that was answered.</p>
          </div>
          <div className={page.buttons}>
            <a className={buttonClass()} href={`/api/groups/${group.id}/grades.csv`}>
              CSV
            </a>
            <PrintButton />
          </div>
        </div>
        {exercises.length === 0 || students.length === 0 ? (
          <p>It fills as soon as the group has a student and an exercise.</p>
        ) : (
          <>
            <GradeSheet
              exercises={exercises.map(({ id, title }) => ({ id, title }))}
              students={students}
              book={book}
            />
            <LineMeans titles={exercises.map(({ title }) => title)} columns={book.columns} />
          </>
        )}
      </main>
    </>
  );
}
