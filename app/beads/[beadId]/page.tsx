import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { beadPageFor, here, ownOnly, type Here } from "@/app/_door/here";
import { Workbench } from "@/components/bead";
import type { Gauge } from "@/components/canvas";
import { Header } from "@/components/shell";
import { page } from "@/components/ui";
import { issue } from "@/lib/base";
import type { Db } from "@/lib/db";
import { calibrationDoubt, instrumentLabel, type InstrumentKind } from "@/lib/inspect";
import { beadThing, getBead, readBead } from "@/lib/beads";
import { listInstruments } from "@/lib/jobs";
import { recordSentence } from "@/lib/store";
import { lastSetup, listSavedSetups, shopCounts, shopSetsToChoose } from "@/lib/shop";
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
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { beadId } = await params;
  const now = await here();
  const thing = await beadThing(now.db, beadId);
  const bead = thing && now.may("bead.read", thing) ? await getBead(now.db, beadId) : null;
  return { title: bead ? `${bead.number} ${bead.content.title}` : "Nothing here" };
}

/** What is only looked through, or reads light, gives no size. */
const notGauges: ReadonlySet<InstrumentKind> = new Set(["magnifier", "light-meter", "borescope", "camera"]);

/** The step of a gauge that nobody wrote down, mm: that of a leg gauge (common practice, no source). */
const USUAL_STEP_MM = 0.5;

async function shopGauges(db: Db): Promise<Gauge[]> {
  const today = new Date().toISOString().slice(0, 10);
  return (await listInstruments(db))
    .filter(({ content, retiredAt }) => retiredAt === null && !notGauges.has(content.kind))
    .map(({ content }) => ({
      name: instrumentLabel(content),
      resolution: content.resolution ?? USUAL_STEP_MM,
      doubt: calibrationDoubt(content, today),
    }));
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

export default async function BeadPage({ params }: Props) {
  const { beadId } = await params;
  const now = await beadPageFor("bead.read", beadId);
  const [bead, units, saved, last, counts, gauges] = await Promise.all([
    getBead(now.db, beadId),
    currentUnits(),
    listSavedSetups(now.db),
    lastSetup(now.db, beadId, ownOnly(now.actor)),
    shopCounts(now.db),
    shopGauges(now.db),
  ]);
  if (!bead) return unreadableOrNothing(now, beadId);
  const sets = await shopSetsToChoose(now.db, [bead.content.judgement.criteriaId]);
  return (
    <Workbench
      bead={bead}
      units={units}
      savedSetups={saved}
      lastSetup={last}
      setupStore={{ save: saveSetupAction, remove: deleteSetupAction }}
      shop={{ counts, sets, gauges, onReset: resetShopCountsAction }}
      onRunAgain={runAgain.bind(null, bead.id)}
      onChooseUnits={chooseUnitsAction}
    />
  );
}
