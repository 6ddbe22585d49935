import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { RecordView } from "@/components/inspect";
import { Header } from "@/components/shell";
import { buttonClass, form, page, Panel } from "@/components/ui";
import { acceptedBeyond, movedSince, revisionTitle } from "@/lib/inspect";
import { jobBeads, listSigned } from "@/lib/jobs";
import { paperSigning, paperWords } from "@/lib/keys";
import { pageFor } from "../../../../_door/here";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Signed record" };

export default async function RevisionPage({
  params,
}: {
  params: Promise<{ inspectionId: string; revision: string }>;
}) {
  const { inspectionId, revision } = await params;
  const now = await pageFor("record.read");
  const all = await listSigned(now.db, inspectionId);
  const one = all.find((row) => String(row.revision) === revision);
  if (!one) notFound();
  const newest = all.at(-1)?.revision ?? one.revision;
  const { record } = one;
  const moved = record ? movedSince(record, await jobBeads(now.db, record.job.id)) : [];
  const beyond = record ? acceptedBeyond(record) : [];
  return (
    <>
      <Header>
        <Link href={`/inspections/${inspectionId}`}>The inspection</Link>
      </Header>
      <main className={page.page}>
        <h1>
          Inspection {record?.inspection.number}: {revisionTitle(one, one.revision)}
        </h1>
        {newest > one.revision && (
          <Panel title="Not the newest" tone="straw">
            <Link href={`/inspections/${inspectionId}/revisions/${newest}`}>
              Revision {newest} stands in its place.
            </Link>
          </Panel>
        )}
        {!one.intact && (
          <Panel title="This text was changed after signing" tone="danger">
            <p>Its digest no longer fits. Do not rely on it; the log page says more.</p>
          </Panel>
        )}
        {beyond.length > 0 && (
          <Panel title="Accepted before this was compared" tone="danger">
            <p>The signed text stays as it is. Today these welds would be open:</p>
            {beyond.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </Panel>
        )}
        {moved.length > 0 && (
          <Panel title="Changed since it was signed" tone="danger">
            {moved.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </Panel>
        )}
        <div className={form.row}>
          <a
            className={buttonClass("main")}
            href={`/api/inspections/${inspectionId}/pdf?revision=${one.revision}`}
          >
            PDF of this revision
          </a>
        </div>
        <p className={page.note}>{paperWords(await paperSigning(now.db, new Date()), one.standing)}</p>
        <p className={page.mono}>SHA-256 {one.digest}</p>
        {record && <RecordView record={record} signed={one} />}
      </main>
    </>
  );
}
