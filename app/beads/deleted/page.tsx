import type { Metadata } from "next";
import { ownOnly, pageFor } from "@/app/_door/here";
import { Header } from "@/components/shell";
import { LocalTime, page, Panel, SaidForm } from "@/components/ui";
import { KEPT_DAYS, listDeletedBeads, type DeletedBeadRecord } from "@/lib/beads";
import { restoreBeadAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Deleted beads" };

export default async function DeletedBeadsPage() {
  const now = await pageFor("bead.delete");
  const deleted = await listDeletedBeads(now.db, ownOnly(now.actor), new Date());
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.narrow}`}>
        <h1>Deleted beads</h1>
        <p>
          A deleted bead can be brought back for {KEPT_DAYS} days, with its photos and marks as they were.
          Then it is erased for good; that it was there, and who deleted it, stays in the log.
        </p>
        {deleted.length === 0 && (
          <p className={page.sum}>Nothing was deleted in the last {KEPT_DAYS} days.</p>
        )}
        {deleted.map((bead) => (
          <DeletedBead key={bead.id} {...bead} />
        ))}
      </main>
    </>
  );
}

function DeletedBead({ id, number, title, deletedAt, restorableUntil }: DeletedBeadRecord) {
  return (
    <Panel title={`${number} ${title}`} tone="bronze">
      <p>
        Deleted on <LocalTime iso={deletedAt} only="day" />, can be brought back until{" "}
        <LocalTime iso={restorableUntil} />.
      </p>
      <SaidForm action={restoreBeadAction.bind(null, id)} submit="Bring it back" tone="plain" />
    </Panel>
  );
}
