import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { StudyResult } from "@/components/gauge";
import { PrintButton } from "@/components/report";
import { Header } from "@/components/shell";
import { buttonClass, form, page, SaidForm } from "@/components/ui";
import { instrumentLabel } from "@/lib/inspect";
import { getStudy, listInstruments } from "@/lib/jobs";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor } from "@/app/_door/here";
import { withdrawStudyAction } from "../../../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Study of a gauge" };

export default async function StudyPage({
  params,
}: {
  params: Promise<{ instrumentId: string; studyId: string }>;
}) {
  const { instrumentId, studyId } = await params;
  const now = await pageFor("job.read");
  const [found, instruments, { preferences }] = await Promise.all([
    getStudy(now.db, studyId),
    listInstruments(now.db),
    currentUnits(),
  ]);
  const instrument = instruments.find(({ id }) => id === instrumentId);
  if (!found || found.instrumentId !== instrumentId || !instrument) notFound();
  const { study, withdrawnAt } = found;
  return (
    <>
      <Header>
        <Link href={`/instruments/${instrumentId}`}>{instrumentLabel(instrument.content)}</Link>
      </Header>
      <main className={page.page}>
        <h1>Study of {instrumentLabel(instrument.content)}</h1>
        {withdrawnAt && <p className={page.notice}>Withdrawn: readings taken since do not carry it.</p>}
        <StudyResult study={study} lengths={preferences.length} />
        <div className={form.row} data-print="no">
          <PrintButton />
          <a className={buttonClass()} href={`/api/gauge-studies/${studyId}/csv`}>
            As CSV
          </a>
          {now.may("job.write") && (
            <SaidForm
              action={withdrawStudyAction.bind(null, studyId, withdrawnAt === null)}
              submit={withdrawnAt === null ? "Withdraw it" : "Let it count again"}
              tone="plain"
            />
          )}
        </div>
      </main>
    </>
  );
}
