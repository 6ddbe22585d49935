import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { beadPageFor } from "@/app/_door/here";
import { Header } from "@/components/shell";
import { buttonClass, page, Panel, SaidForm } from "@/components/ui";
import { deletionRefusal, getBead, KEPT_DAYS } from "@/lib/beads";
import { recordSentence } from "@/lib/store";
import { deleteBeadAction } from "../../deleted/actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Delete a bead" };

/** What deleting means is said before it is done; where a record forbids it, why. */
export default async function DeleteBeadPage({ params }: { params: Promise<{ beadId: string }> }) {
  const { beadId } = await params;
  const { db } = await beadPageFor("bead.delete", beadId);
  const bead = await getBead(db, beadId);
  if (!bead) notFound();
  const refusal = await deletionRefusal(db, beadId);
  return (
    <>
      <Header>
        <Link href={`/beads/${beadId}`}>Back to the bead</Link>
      </Header>
      <main className={`${page.page} ${page.narrow}`}>
        <h1>
          Delete bead {bead.number}, {bead.content.title}?
        </h1>
        {refusal ? (
          <Panel title="It stays" tone="purple">
            <p>{recordSentence(refusal)}</p>
            <Link className={buttonClass()} href={`/beads/${beadId}`}>
              Back to the bead
            </Link>
          </Panel>
        ) : (
          <Panel title="What that means" tone="straw">
            <p>
              It leaves the list, the trends and its job, with {count(bead.photos.length, "photo")}. For{" "}
              {KEPT_DAYS} days it can be brought back as it was; then it is erased. Its number is not given to
              another bead.
            </p>
            <p>
              No signed record and no hand-in speaks of it. That it was deleted, when and by whom, stays in
              the log.
            </p>
            <SaidForm action={deleteBeadAction.bind(null, beadId)} submit="Delete this bead" tone="danger" />
          </Panel>
        )}
      </main>
    </>
  );
}

const count = (n: number, what: string): string => (n === 1 ? `its ${what}` : `its ${n} ${what}s`);
