import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { pageFor, type Here } from "@/app/_door/here";
import { StudentSteps, type StudentBead } from "@/components/course";
import { Header } from "@/components/shell";
import { buttonClass, page } from "@/components/ui";
import { workNow } from "@/lib/beads";
import { progress } from "@/lib/course";
import { findPage, type ListedBead, type PageAt } from "@/lib/find";
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
  const [listed, handIns] = await Promise.all([currentBeads(db, personId), listHandIns(db, { personId })]);
  const handInOf = new Map(handIns.map((one) => [one.beadId, one]));
  return listed.flatMap(({ id, number, title, createdAt, thumbSha256, said }) => {
    if (said === null) return [];
    const handIn = handInOf.get(id) ?? null;
    const { card, verdict } = said;
    return {
      beadId: id,
      number,
      title,
      day: dayText(createdAt),
      photo: thumbSha256,
      exerciseId: handIn?.exerciseId ?? null,
      lookedFor: card.lookedFor,
      imperfections: card.marks,
      verdict,
      cause: card.cause?.name ?? null,
      feedback: handIn && { handInId: handIn.id, returned: Boolean(handIn.feedback?.returnedAt) },
    };
  });
}

/** One person's beads, oldest first, none of them stale: a step from bead to bead would skip one that says nothing. */
async function currentBeads(db: Here["db"], welderId: string): Promise<readonly ListedBead[]> {
  const { weighedBy } = await assessContext(db, []);
  const read = async (): Promise<ListedBead[]> => {
    const all: ListedBead[] = [];
    for (let at: PageAt = "start"; ;) {
      const { beads, next } = await findPage(db, { sort: "oldest" }, { welderId }, { at, size: 200 });
      all.push(...beads);
      if (next === null) return all;
      at = { after: next };
    }
  };
  const beads = await read();
  const stale = beads.filter(({ said }) => said?.weighedBy !== weighedBy).map(({ number }) => number);
  if (stale.length === 0) return beads;
  await workNow(db, stale);
  return read();
}
