import type { Metadata } from "next";
import Link from "next/link";
import { Header } from "@/components/shell";
import { buttonClass, LocalTime, page, Panel } from "@/components/ui";
import { personIdOf, reach } from "@/lib/people";
import { listTrials } from "@/lib/series";
import { fieldLabel } from "@/lib/setup";
import { pageFor } from "../_door/here";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Trials" };

/** Every series of beads; whoever sees only their own sees those. */
export default async function TrialsPage() {
  const now = await pageFor("bead.read");
  const own = reach(now.actor, "bead.read") === "all" ? {} : { personId: personIdOf(now.actor) ?? "nobody" };
  const trials = await listTrials(now.db, own);
  return (
    <>
      <Header />
      <main className={page.page}>
        <h1>Trials</h1>
        <p>
          A series of beads that varies one knob or two on purpose, so that what runs best is known and not
          guessed.
        </p>
        {now.may("bead.create") && (
          <div>
            <Link href="/plan" className={buttonClass()}>
              Begin from a plan
            </Link>
          </div>
        )}
        {trials.length === 0 && (
          <p className={page.note}>None yet. Plan a run, or open a bead, and make a trial of it.</p>
        )}
        {trials.map(({ id, number, content, createdAt, runs }) => (
          <Panel
            key={id}
            tone="purple"
            title={<Link href={`/trials/${id}`}>{`Trial ${number}: ${content.title}`}</Link>}
          >
            <p className={page.note}>
              <LocalTime iso={createdAt} only="day" /> ·{" "}
              {content.knobs.map(({ field }) => fieldLabel(field)).join(" and ")} · {runs.length} of{" "}
              {Math.max(content.budget, content.points.length)} beads begun
            </p>
          </Panel>
        ))}
      </main>
    </>
  );
}
