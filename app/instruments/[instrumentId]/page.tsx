import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { StudyResult } from "@/components/gauge";
import { Header } from "@/components/shell";
import { buttonClass, page, Panel } from "@/components/ui";
import { canBeStudied, instrumentLabel, instrumentNames } from "@/lib/inspect";
import { listInstruments, listStudies, studiesForReadings } from "@/lib/jobs";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor } from "@/app/_door/here";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Studies of a gauge" };

/** The studies of one gauge: the newest whole, the others by their day. */
export default async function InstrumentPage({ params }: { params: Promise<{ instrumentId: string }> }) {
  const { instrumentId } = await params;
  const now = await pageFor("job.read");
  const instrument = (await listInstruments(now.db)).find(({ id }) => id === instrumentId);
  if (!instrument || !canBeStudied(instrument.content.kind)) notFound();
  const [studies, { preferences }] = await Promise.all([
    listStudies(now.db, { instrumentId }),
    currentUnits(),
  ]);
  const counting = (await studiesForReadings(now.db, new Date().toISOString().slice(0, 10))).get(
    instrumentId,
  );
  const newest = studies.find(({ withdrawnAt }) => withdrawnAt === null);
  return (
    <>
      <Header>
        <Link href="/instruments">Instruments</Link>
      </Header>
      <main className={page.page}>
        <div className={page.top}>
          <div>
            <h1>{instrumentLabel(instrument.content)}</h1>
            <p>
              {instrumentNames[instrument.content.kind]}.{" "}
              {counting
                ? `Readings taken from now on carry the study of ${counting.on}.`
                : "No study counts for readings: they carry the uncertainty of its smallest step alone."}
            </p>
          </div>
          {now.may("job.write") && (
            <Link className={buttonClass("main")} href={`/instruments/${instrumentId}/new`}>
              New study
            </Link>
          )}
        </div>
        {newest && <StudyResult study={newest.study} lengths={preferences.length} />}
        {studies.length > 0 && (
          <Panel title="Its studies" tone="bronze">
            <ul className={page.list}>
              {studies.map(({ id, study, withdrawnAt }) => (
                <li key={id}>
                  <Link className={buttonClass()} href={`/instruments/${instrumentId}/studies/${id}`}>
                    {study.on}: {study.what}, {study.people.length} people, {study.parts.length} parts
                    {withdrawnAt ? " (withdrawn)" : ""}
                  </Link>
                </li>
              ))}
            </ul>
          </Panel>
        )}
        {studies.length === 0 && (
          <Panel title="No study yet" tone="straw">
            <p>
              Two or more people read the same parts twice or more, none knowing what was read before. That
              shows how far readings lie apart by the gauge and by who holds it, which no smallest step tells.
            </p>
          </Panel>
        )}
      </main>
    </>
  );
}
