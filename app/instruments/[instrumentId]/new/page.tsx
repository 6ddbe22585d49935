import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { StudySheet } from "@/components/gauge";
import { Header } from "@/components/shell";
import { page } from "@/components/ui";
import { canBeStudied, instrumentLabel, type InstrumentKind } from "@/lib/inspect";
import { listInstruments } from "@/lib/jobs";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor } from "@/app/_door/here";
import { addStudyAction } from "../../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "New study of a gauge" };

/** What gauges of a kind mostly read. */
const usually: Partial<Record<InstrumentKind, string>> = {
  "fillet-gauge": "leg of a fillet",
  "throat-gauge": "throat of a fillet",
  "undercut-gauge": "depth of undercut",
  "cap-gauge": "height of the cap",
  "misalignment-gauge": "offset of the plates",
  "feeler-gauge": "root gap",
  protractor: "toe angle",
};

export default async function NewStudyPage({ params }: { params: Promise<{ instrumentId: string }> }) {
  const { instrumentId } = await params;
  const now = await pageFor("job.write");
  const instrument = (await listInstruments(now.db)).find(({ id }) => id === instrumentId);
  if (!instrument || !canBeStudied(instrument.content.kind)) notFound();
  const { kind } = instrument.content;
  const { preferences } = await currentUnits();
  return (
    <>
      <Header>
        <Link href={`/instruments/${instrumentId}`}>{instrumentLabel(instrument.content)}</Link>
      </Header>
      <main className={page.page}>
        <h1>New study</h1>
        <StudySheet
          instrumentId={instrumentId}
          unit={kind === "protractor" ? "deg" : preferences.length}
          today={new Date().toISOString().slice(0, 10)}
          what={usually[kind] ?? "width of the face"}
          save={addStudyAction.bind(null, instrumentId)}
        />
      </main>
    </>
  );
}
