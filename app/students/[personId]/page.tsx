import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { pageFor } from "@/app/_door/here";
import { StudentSteps } from "@/components/course";
import { Header } from "@/components/shell";
import { buttonClass, page } from "@/components/ui";
import { progress } from "@/lib/course";
import { personIdOf } from "@/lib/people";
import { getPerson } from "@/lib/roster";
import { ExercisesDue } from "./exercises-due";
import { studentBeads } from "./student-beads";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Student" };

function beadsTitle(count: number): string {
  if (count === 0) return "Beads";
  return `${count === 1 ? "One bead" : `${count} beads`}, oldest first`;
}

/** A student's exercises and beads: what is due, what was answered, and what improved from one try to the next. */
export default async function StudentPage({ params }: { params: Promise<{ personId: string }> }) {
  const { personId } = await params;
  const now = await pageFor("bead.read", { personId });
  const person = await getPerson(now.db, personId);
  if (!person) notFound();
  const beads = await studentBeads(now, personId);
  const all = now.may("course.read");
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div className={page.top}>
          <div>
            <p className={page.trail}>
              <Link href={all ? "/students" : "/"}>{all ? "All students" : "All beads"}</Link>
            </p>
            <h1>{person.name ?? "Name removed"}</h1>
            {person.mark && <p>{person.mark}</p>}
          </div>
          <div className={page.buttons}>
            <Link className={buttonClass()} href={`/students/${personId}/record`}>
              Training record
            </Link>
            <Link className={buttonClass()} href="/hand-in">
              Hand in by code
            </Link>
          </div>
        </div>
        <ExercisesDue now={now} personId={personId} own={personIdOf(now.actor) === personId} />
        <h2>{beadsTitle(beads.length)}</h2>
        <StudentSteps beads={beads} steps={progress(beads)} />
      </main>
    </>
  );
}
