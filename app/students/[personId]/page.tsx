import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { pageFor, type Here } from "@/app/_door/here";
import { StudentSteps, type StudentBead } from "@/components/course";
import { Header } from "@/components/shell";
import { buttonClass, page } from "@/components/ui";
import { assessBead } from "@/lib/assess";
import { countedBead, progress } from "@/lib/course";
import { listBeads } from "@/lib/beads";
import { listHandIns } from "@/lib/classroom";
import { getPerson } from "@/lib/roster";
import { assessContext } from "@/lib/shop";
import { dayText } from "@/lib/report";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Student" };

/** A student's beads, oldest first: what improved from one to the next, and what did not. */
export default async function StudentPage({ params }: { params: Promise<{ personId: string }> }) {
  const { personId } = await params;
  const now = await pageFor("bead.read", { personId });
  const person = await getPerson(now.db, personId);
  if (!person) notFound();
  const beads = await studentBeads(now, personId);
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div className={page.top}>
          <div>
            <p className={page.trail}>
              <Link href={now.may("course.read") ? "/students" : "/"}>
                {now.may("course.read") ? "All students" : "All beads"}
              </Link>
            </p>
            <h1>{person.name ?? "Name removed"}</h1>
            <p>
              {person.mark && `${person.mark} · `}
              {beads.length === 1 ? "one bead" : `${beads.length} beads`}, oldest first
            </p>
          </div>
          <Link className={buttonClass()} href="/hand-in">
            Hand in by code
          </Link>
        </div>
        <StudentSteps beads={beads} steps={progress(beads)} />
      </main>
    </>
  );
}

/** Oldest first, each with what it shows and whether it was handed in. */
async function studentBeads({ db }: Here, personId: string): Promise<readonly StudentBead[]> {
  const [newest, handIns, context] = await Promise.all([
    listBeads(db, { welderId: personId }),
    listHandIns(db, { personId }),
    assessContext(db),
  ]);
  return [...newest].reverse().map((bead) => {
    const handIn = handIns.find(({ beadId }) => beadId === bead.id) ?? null;
    const { imperfections, cause, verdict } = countedBead(assessBead(bead, context));
    return {
      beadId: bead.id,
      number: bead.number,
      title: bead.content.title,
      day: dayText(bead.createdAt),
      photo: bead.photos[0]?.sha256 ?? null,
      exerciseId: handIn?.exerciseId ?? null,
      lookedFor: bead.content.judgement.lookedFor,
      imperfections,
      verdict,
      cause: cause?.name ?? null,
      feedback: handIn && { handInId: handIn.id, returned: Boolean(handIn.feedback?.returnedAt) },
    };
  });
}
