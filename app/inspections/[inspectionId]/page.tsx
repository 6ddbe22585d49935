import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { DraftEditor, OpenWelds, RecordView, SignForm } from "@/components/inspect";
import { Header } from "@/components/shell";
import { buttonClass, form, page, Panel, SaidForm } from "@/components/ui";
import {
  lookedAt,
  movedSince,
  openPoints,
  instrumentNames,
  revisionTitle,
  type SignedRecord,
  weldNumbers,
  type JobWeld,
} from "@/lib/inspect";
import { personIdOf } from "@/lib/people";
import {
  draftRecord,
  getInspection,
  getJob,
  jobBeads,
  listInspections,
  listInstruments,
  listSigned,
  seenDigest,
  weldsOf,
} from "@/lib/jobs";
import { listPeople, type PersonRecord } from "@/lib/roster";
import { currentUnits } from "../../_door/current-units";
import { pageFor } from "../../_door/here";
import { correctInspectionAction, readInspectionAction, saveInspectionAction, signAction } from "../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Inspection" };

export default async function InspectionPage({ params }: { params: Promise<{ inspectionId: string }> }) {
  const { inspectionId } = await params;
  const now = await pageFor("record.read");
  const inspection = await getInspection(now.db, inspectionId);
  if (!inspection) notFound();
  const { draft } = inspection;
  const [job, signed, beads] = await Promise.all([
    getJob(now.db, inspection.jobId),
    listSigned(now.db, inspectionId),
    jobBeads(now.db, inspection.jobId),
  ]);
  const newest = signed.at(-1);
  const record = draft.open ? await draftRecord(now.db, inspectionId) : (newest?.record ?? null);
  if (!job) notFound();
  const moved = newest?.record ? movedSince(newest.record, beads) : [];
  return (
    <>
      <Header>
        <Link href={`/jobs/${job.id}`}>Job {job.number}</Link>
      </Header>
      <main className={page.page}>
        <h1>
          Inspection {inspection.number}:{" "}
          {draft.open || !newest ? "draft, not signed" : lowerFirst(revisionTitle(newest, newest.revision))}
        </h1>
        <div className={form.row}>
          {draft.open && (
            <a className={buttonClass()} href={`/api/inspections/${inspectionId}/pdf?draft`}>
              PDF of the draft
            </a>
          )}
          {signed.map((one) => (
            <Link
              key={one.revision}
              className={buttonClass()}
              href={`/inspections/${inspectionId}/revisions/${one.revision}`}
            >
              {revisionTitle(one, one.revision)}
            </Link>
          ))}
        </div>
        {draft.open && <WeldByWeld inspectionId={inspectionId} welds={lookedAt(job.content, draft)} />}
        {moved.length > 0 && (
          <Panel title="Changed since it was signed" tone="danger">
            {moved.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </Panel>
        )}
        {!draft.open && newest && !newest.intact && <Tampered />}
        {!draft.open && now.may("job.write") && (
          <SaidForm action={correctInspectionAction.bind(null, inspectionId)} submit="Correct" tone="plain" />
        )}
        {draft.open && now.may("job.write") && (
          <DraftEditor
            start={draft}
            units={(await currentUnits()).preferences}
            revision={inspection.revision}
            save={saveInspectionAction.bind(null, inspectionId)}
            readStored={readInspectionAction.bind(null, inspectionId)}
            instruments={await instrumentChoices(now.db, draft.instrumentIds)}
            welds={job.content.welds}
            before={await inspectionBefore(now.db, inspection.number)}
          />
        )}
        {record && <RecordView record={record} signed={draft.open ? null : (newest ?? null)} />}
        {draft.open && record && <OpenWelds record={record} />}
        {draft.open && record && (
          <Signing now={now} record={record} inspectionId={inspectionId} isCorrection={signed.length > 0} />
        )}
      </main>
    </>
  );
}

/** Each weld on a screen of its own. */
function WeldByWeld({ inspectionId, welds }: { inspectionId: string; welds: readonly JobWeld[] }) {
  return (
    <nav aria-label="Welds one by one" className={form.row}>
      {welds.map(({ id, number }) => (
        <Link key={id} className={buttonClass()} href={`/inspections/${inspectionId}/welds/${id}`}>
          Weld {number}
        </Link>
      ))}
    </nav>
  );
}

const lowerFirst = (text: string): string => text.slice(0, 1).toLowerCase() + text.slice(1);

function Tampered() {
  return (
    <Panel title="This text was changed after signing" tone="danger">
      <p>Its digest no longer fits. Do not rely on it; the log page says more.</p>
    </Panel>
  );
}

type Now = Awaited<ReturnType<typeof pageFor>>;

/** The newest inspection before this one, of any job: a shop looks the same way from job to job. */
async function inspectionBefore(db: Now["db"], number: number) {
  const before = (await listInspections(db)).find((one) => one.number < number);
  return before ? { number: before.number, draft: before.draft } : null;
}

async function instrumentChoices(db: Now["db"], used: readonly string[]) {
  return (await listInstruments(db))
    .filter(({ id, retiredAt }) => retiredAt === null || used.includes(id))
    .map(({ id, content }) => ({
      id,
      title: `${content.name}, ${instrumentNames[content.kind]}, serial ${content.serial || "not recorded"}, due ${content.dueOn ?? "not recorded"}`,
    }));
}

/** For each of those who may sign and ran welds of the record, which. */
async function ranThemselves(
  { db, actor }: Now,
  record: SignedRecord,
  signers: readonly PersonRecord[],
): Promise<readonly string[]> {
  const said = signers.map(async ({ id, mark, name }) => {
    const welds = weldNumbers(record, await weldsOf(db, record, { personId: id, mark }));
    const who = id === personIdOf(actor) ? "You" : (name ?? mark ?? "Somebody");
    return welds === null ? [] : [`${who} ran ${welds}.`];
  });
  return (await Promise.all(said)).flat();
}

async function Signing({
  now,
  record,
  inspectionId,
  isCorrection,
}: {
  now: Now;
  record: NonNullable<Awaited<ReturnType<typeof draftRecord>>>;
  inspectionId: string;
  isCorrection: boolean;
}) {
  const chooses = now.actor.kind === "owner-here";
  const inspectors = (await listPeople(now.db, { holds: "inspector" })).filter(
    ({ userId }) => userId !== null,
  );
  const own = personIdOf(now.actor);
  const maySign = chooses
    ? inspectors.length > 0
    : now.may("record.sign", { personId: own }) && inspectors.some(({ id }) => id === own);
  if (!maySign)
    return (
      <Panel title="Sign" tone="purple">
        <p>
          Only an inspector with an account of their own signs.{" "}
          {chooses && <Link href="/people">Enter one under People and open an account.</Link>}
        </p>
      </Panel>
    );
  const signers = chooses ? inspectors : inspectors.filter(({ id }) => id === own);
  return (
    <SignForm
      action={signAction.bind(null, inspectionId, seenDigest(record))}
      signers={inspectors.map(({ id, name, mark }) => ({
        id,
        title: [name, mark].filter(Boolean).join(", "),
      }))}
      chooses={chooses}
      hasOpenPoints={openPoints(record).length > 0}
      isCorrection={isCorrection}
      ran={await ranThemselves(now, record, signers)}
    />
  );
}
