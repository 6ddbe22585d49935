import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { AttachBead, JobEditor } from "@/components/inspect";
import { Header } from "@/components/shell";
import { buttonClass, form, page, Panel, SaidForm } from "@/components/ui";
import { listCriteria } from "@/lib/accept";
import { inspectionState, type JobWeld } from "@/lib/inspect";
import type { BeadRecord } from "@/lib/beads";
import { getJob, inspectionPage, jobBeads } from "@/lib/jobs";
import { listPeople } from "@/lib/roster";
import { shopSetsToChoose } from "@/lib/shop";
import { currentUnits } from "../../_door/current-units";
import { pageFor, type Here } from "../../_door/here";
import {
  attachBeadAction,
  beginInspectionAction,
  detachBeadAction,
  findFreeBeadsAction,
  newBeadForWeldAction,
  readJobAction,
  saveJobAction,
} from "../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Job" };

interface Asked {
  readonly params: Promise<{ jobId: string }>;
  readonly searchParams: Promise<{ after?: string | string[] }>;
}

export default async function JobPage({ params, searchParams }: Asked) {
  const [{ jobId }, { after }] = [await params, await searchParams];
  const now = await pageFor("job.read");
  const job = await getJob(now.db, jobId);
  if (!job) notFound();
  const [beads, people, sets, units] = await Promise.all([
    jobBeads(now.db, jobId),
    listPeople(now.db),
    shopSetsToChoose(now.db, [
      job.content.criteriaId,
      ...job.content.welds.map(({ criteriaId }) => criteriaId ?? null),
    ]),
    currentUnits(),
  ]);
  const writes = now.may("job.write");
  const { welds } = job.content;
  return (
    <>
      <Header>
        <Link href="/jobs">All jobs</Link>
      </Header>
      <main className={page.page}>
        <h1>
          Job {job.number}: {job.content.title}
        </h1>
        <Inspections now={now} jobId={jobId} after={typeof after === "string" ? after : undefined} />
        {welds.map((weld) => (
          <WeldPanel
            key={weld.id}
            {...{ jobId, weld, writes }}
            beads={beads.filter(({ weldId }) => weldId === weld.id)}
          />
        ))}
        {writes && welds.length > 0 && (
          <AttachBead
            welds={welds.map(({ id, number }) => ({ id, number }))}
            find={findFreeBeadsAction}
            attach={attachBeadAction.bind(null, jobId)}
          />
        )}
        {writes && (
          <JobEditor
            start={job.content}
            revision={job.revision}
            save={saveJobAction.bind(null, jobId)}
            readStored={readJobAction.bind(null, jobId)}
            criteria={listCriteria(sets)}
            units={units.preferences}
            people={people.map(({ id, name, mark }) => ({
              id,
              title: [mark, name].filter(Boolean).join(", "),
            }))}
          />
        )}
      </main>
    </>
  );
}

/** So many inspections stand on a page of a job. */
const SHOWN = 24;

/** Inspections of the job, the next one, and the whole of it as an archive. */
async function Inspections({ now, jobId, after }: { now: Here; jobId: string; after: string | undefined }) {
  // A row that is gone begins the list anew.
  const { inspections, next } = (await inspectionPage(now.db, jobId, { limit: SHOWN, after })) ??
    (await inspectionPage(now.db, jobId, { limit: SHOWN })) ?? { inspections: [], next: null };
  return (
    <Panel title="Inspections" tone="blue">
      <div className={form.row}>
        {inspections.map((one) => (
          <Link key={one.id} href={`/inspections/${one.id}`} className={buttonClass()}>
            Inspection {one.number}: {inspectionState(one)}
          </Link>
        ))}
      </div>
      {(next !== null || after !== undefined) && (
        <p>
          {after !== undefined && <Link href={`/jobs/${jobId}`}>Newest inspections</Link>}{" "}
          {next !== null && <Link href={`/jobs/${jobId}?after=${next}`}>Older inspections</Link>}
        </p>
      )}
      {now.may("job.write") && (
        <SaidForm action={beginInspectionAction.bind(null, jobId)} submit="New inspection" />
      )}
      {now.may("data.export") && (
        <a
          href={`/api/export/archive.zip?job=${encodeURIComponent(jobId)}`}
          className={buttonClass()}
          download
        >
          The whole job as one archive
        </a>
      )}
    </Panel>
  );
}

function WeldPanel({
  jobId,
  weld,
  beads,
  writes,
}: {
  jobId: string;
  weld: JobWeld;
  beads: readonly BeadRecord[];
  writes: boolean;
}) {
  return (
    <Panel title={`Weld ${weld.number}`} tone="bronze">
      {beads.map((bead) => (
        <div key={bead.id} className={form.row}>
          <Link href={`/beads/${bead.id}`} className={buttonClass()}>
            Bead {bead.number}: {bead.content.title}
          </Link>
          {writes && (
            <SaidForm
              action={detachBeadAction.bind(null, jobId, bead.id)}
              submit={`Take bead ${bead.number} off`}
              tone="plain"
            />
          )}
        </div>
      ))}
      {writes && (
        <SaidForm
          action={newBeadForWeldAction.bind(null, jobId, weld.id)}
          submit="New bead for this weld"
          tone="plain"
        />
      )}
    </Panel>
  );
}
