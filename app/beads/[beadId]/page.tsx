import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { benchProps } from "@/app/_door/bench-props";
import { beadPageFor, here, thingOfBead, type Here } from "@/app/_door/here";
import { seriesNote } from "@/app/_door/series";
import { firstAnswer, Workbench } from "@/components/bead";
import { Header } from "@/components/shell";
import { page } from "@/components/ui";
import { issue } from "@/lib/base";
import { beadThing, getBead, readBead, type BeadRecord } from "@/lib/beads";
import { getJob, listInspections } from "@/lib/jobs";
import { recordSentence } from "@/lib/store";
import {
  chooseUnitsAction,
  deleteSetupAction,
  resetShopCountsAction,
  runAgain,
  saveSetupAction,
} from "../actions";

export const dynamic = "force-dynamic";

interface Props {
  params: Promise<{ beadId: string }>;
  searchParams: Promise<{ guide?: string }>;
}

export async function generateMetadata({ params }: Pick<Props, "params">): Promise<Metadata> {
  const { beadId } = await params;
  const now = await here();
  const thing = await beadThing(now.db, beadId);
  const bead = thing && now.may("bead.read", thing) ? await getBead(now.db, beadId) : null;
  return { title: bead ? `${bead.number} ${bead.content.title}` : "Nothing here" };
}

/** A row that is there and cannot be read is told apart from none, with what can be done. */
async function unreadableOrNothing(now: Here, beadId: string) {
  if ((await readBead(now.db, beadId)) === null) notFound();
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.narrow}`}>
        <h1>This bead cannot be read</h1>
        <p role="alert">{recordSentence(issue("bead-unreadable"))}</p>
      </main>
    </>
  );
}

/** The weld this bead was run on, with the way back: to its screen in an open inspection, else to its job. */
async function weldOf(now: Here, { jobId, weldId }: BeadRecord) {
  const job = jobId !== null && weldId !== null && now.may("job.read") ? await getJob(now.db, jobId) : null;
  const weld = job?.content.welds.find(({ id }) => id === weldId);
  if (!job || !weld) return null;
  const open = (await listInspections(now.db, { jobId: job.id })).find(({ draft }) => draft.open);
  const href = open ? `/inspections/${open.id}/welds/${weld.id}` : `/jobs/${job.id}`;
  return { href, words: `Weld ${weld.number}, job ${job.number}` };
}

export default async function BeadPage({ params, searchParams }: Props) {
  const { beadId } = await params;
  const now = await beadPageFor("bead.read", beadId);
  const bead = await getBead(now.db, beadId);
  if (!bead) return unreadableOrNothing(now, beadId);
  const { shop, ...bench } = await benchProps(now, beadId, [bead.content.judgement.criteriaId]);
  return (
    <Workbench
      bead={bead}
      first={firstAnswer(bead.content, bead.photos, { shopCounts: shop.counts, shopSets: shop.sets })}
      series={await seriesNote(now.db, beadId, bench.units.preferences)}
      {...bench}
      setupStore={{ save: saveSetupAction, remove: deleteSetupAction }}
      shop={{ ...shop, onReset: resetShopCountsAction }}
      onRunAgain={runAgain}
      onChooseUnits={chooseUnitsAction}
      guided={(await searchParams).guide !== undefined}
      weld={await weldOf(now, bead)}
      mayDelete={now.may("bead.delete", await thingOfBead(beadId))}
    />
  );
}
