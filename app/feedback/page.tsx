import type { Metadata } from "next";
import Link from "next/link";
import { HandInState } from "@/components/course";
import { Header } from "@/components/shell";
import { buttonClass, page } from "@/components/ui";
import { listHandIns, waitingFor } from "@/lib/classroom";
import { personIdOf } from "@/lib/people";
import { pageFor } from "../_door/here";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Feedback" };

export default async function FeedbackListPage() {
  const now = await pageFor("course.read");
  const handIns = await listHandIns(now.db);
  const waiting = handIns.filter(({ feedback }) => !feedback?.returnedAt);
  const [first] = waitingFor(handIns, personIdOf(now.actor));
  const returned = handIns.filter(({ feedback }) => feedback?.returnedAt).reverse();
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div className={page.top}>
          <div>
            <p className={page.trail}>
              <Link href="/groups">All groups</Link>
            </p>
            <h1>Feedback</h1>
            <p>{waiting.length === 0 ? "Nothing waits." : `${waiting.length} waiting, the oldest first.`}</p>
          </div>
          <div className={page.buttons}>
            {first && (
              <Link className={buttonClass("main")} href={`/feedback/${first.id}`}>
                One after the other
              </Link>
            )}
            <Link className={buttonClass()} href="/feedback/phrases">
              Quick remarks
            </Link>
          </div>
        </div>
        {[...waiting, ...returned].length > 0 && (
          <ul className={page.list}>
            {[...waiting, ...returned].map((handIn) => (
              <HandInState key={handIn.id} handIn={handIn} verdict={null} withExercise />
            ))}
          </ul>
        )}
      </main>
    </>
  );
}
