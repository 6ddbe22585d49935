import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { benchGauges } from "@/app/_door/bench-props";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor, thingOfBead, type Here } from "@/app/_door/here";
import { attachBeadAction, findFreeBeadsAction, newBeadForWeldAction } from "@/app/jobs/actions";
import { AttachBead, WeldChecklist, WeldReadings, WeldSeen, WeldTurns } from "@/components/inspect";
import { Header } from "@/components/shell";
import { buttonClass, form, page, Panel, SaidForm } from "@/components/ui";
import { issue } from "@/lib/base";
import type { BeadRecord } from "@/lib/beads";
import { lookedAt, weldChecklist, type JobWeld } from "@/lib/inspect";
import { draftRecord, getInspection, getJob, jobBeads } from "@/lib/jobs";
import { recordSentence } from "@/lib/store";
import {
  readInspectionAction,
  readReadingsAction,
  saveInspectionAction,
  saveReadingsAction,
} from "../../../actions";
import styles from "./weld.module.css";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Weld" };

interface Props {
  params: Promise<{ inspectionId: string; weldId: string }>;
  searchParams: Promise<{ bead?: string | string[] }>;
}

/** One weld of an inspection on one screen: its readings, how much was seen, and what is asked against what is there. */
export default async function WeldPage({ params, searchParams }: Props) {
  const [{ inspectionId, weldId }, { bead: asked }] = await Promise.all([params, searchParams]);
  const now = await pageFor("record.read");
  const inspection = await getInspection(now.db, inspectionId);
  const job = inspection && (await getJob(now.db, inspection.jobId));
  const weld = job?.content.welds.find(({ id }) => id === weldId);
  if (!job || !weld) notFound();
  const { draft } = inspection;
  const [beads, record, units] = await Promise.all([
    jobBeads(now.db, job.id),
    draftRecord(now.db, inspectionId),
    currentUnits(),
  ]);
  const own = beads.filter((bead) => bead.weldId === weldId);
  const bead = own.find(({ id }) => id === asked) ?? own.at(-1);
  const writes = draft.open && now.may("job.write");
  return (
    <>
      <Header>
        <Link href={`/inspections/${inspectionId}`}>Inspection {inspection.number}</Link>
      </Header>
      <main className={page.page}>
        <h1>
          Weld {weld.number}, inspection {inspection.number}
        </h1>
        {!draft.open && <p role="status">{recordSentence(issue("inspection-signed"))}</p>}
        <div className={styles.bench}>
          <div className={styles.side}>
            {bead && writes && <Readings now={now} bead={bead} weld={weld} draft={draft} />}
            {own.length > 1 && (
              <nav aria-label="Beads of this weld" className={form.row}>
                {own.map(({ id, number }) => (
                  <Link
                    key={id}
                    className={buttonClass()}
                    href={`?bead=${id}`}
                    aria-current={id === bead?.id}
                  >
                    Bead {number}
                  </Link>
                ))}
              </nav>
            )}
            {writes && (
              <WeldSeen
                key={weldId}
                weld={weld}
                units={units.preferences}
                start={draft}
                revision={inspection.revision}
                save={saveInspectionAction.bind(null, inspectionId)}
                readStored={readInspectionAction.bind(null, inspectionId)}
              />
            )}
            <Turns inspectionId={inspectionId} welds={lookedAt(job.content, draft)} weldId={weldId} />
          </div>
          <div className={styles.side}>
            {record && <WeldChecklist rows={weldChecklist(record, weldId, units.choice)} />}
            {bead && <Photos bead={bead} />}
            {writes && <NoBead jobId={job.id} weld={weld} hasBead={bead !== undefined} />}
          </div>
        </div>
      </main>
    </>
  );
}

async function Readings({
  now,
  bead,
  weld,
  draft,
}: {
  now: Here;
  bead: BeadRecord;
  weld: JobWeld;
  draft: { readonly instrumentIds: readonly string[] };
}) {
  if (!now.may("bead.write", await thingOfBead(bead.id))) return null;
  const [gauges, units] = await Promise.all([benchGauges(now.db, draft.instrumentIds), currentUnits()]);
  return (
    <WeldReadings
      key={bead.id}
      joint={weld.joint}
      gauges={gauges}
      units={units.preferences}
      start={{ readings: bead.content.judgement.readings }}
      revision={bead.revision}
      save={saveReadingsAction.bind(null, bead.id)}
      readStored={readReadingsAction.bind(null, bead.id)}
    />
  );
}

function Turns({
  inspectionId,
  welds,
  weldId,
}: {
  inspectionId: string;
  welds: readonly JobWeld[];
  weldId: string;
}) {
  const at = welds.findIndex(({ id }) => id === weldId);
  const turn = (weld: JobWeld | undefined) =>
    weld ? { href: `/inspections/${inspectionId}/welds/${weld.id}`, number: weld.number } : null;
  return <WeldTurns before={turn(welds[at - 1])} next={turn(welds[at + 1])} />;
}

function Photos({ bead }: { bead: BeadRecord }) {
  return (
    <Panel title={`Bead ${bead.number}: ${bead.content.title}`} tone="bronze">
      <div className={styles.photos}>
        {bead.photos.map(({ id, sha256 }, i) => (
          <img
            key={id}
            src={`/api/photos/${sha256}/small`}
            alt={`Photo ${i + 1} of bead ${bead.number}`}
            loading="lazy"
          />
        ))}
      </div>
      <Link className={buttonClass()} href={`/beads/${bead.id}`}>
        Photos, marks and what was looked for
      </Link>
    </Panel>
  );
}

/** A weld without its bead: begin one, or find the one that was run. */
function NoBead({ jobId, weld, hasBead }: { jobId: string; weld: JobWeld; hasBead: boolean }) {
  const attach = (
    <AttachBead
      welds={[{ id: weld.id, number: weld.number }]}
      find={findFreeBeadsAction}
      attach={attachBeadAction.bind(null, jobId)}
    />
  );
  if (hasBead)
    return (
      <details>
        <summary>Another bead on this weld</summary>
        {attach}
      </details>
    );
  return (
    <>
      <Panel title="No bead yet" tone="straw">
        <SaidForm action={newBeadForWeldAction.bind(null, jobId, weld.id)} submit="New bead for this weld" />
      </Panel>
      {attach}
    </>
  );
}
