import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { beadPageFor, here, ownOnly } from "@/app/_door/here";
import { Workbench } from "@/components/bead/workbench";
import { beadThing, getBead, lastSetup, listSavedSetups, shopCounts, shopSetsToChoose } from "@/lib/record";
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

export default async function BeadPage({ params }: Props) {
  const { beadId } = await params;
  const now = await beadPageFor("bead.read", beadId);
  const [bead, units, saved, last, counts] = await Promise.all([
    getBead(now.db, beadId),
    currentUnits(),
    listSavedSetups(now.db),
    lastSetup(now.db, beadId, ownOnly(now.actor)),
    shopCounts(now.db),
  ]);
  if (!bead) notFound();
  const sets = await shopSetsToChoose(now.db, [bead.content.judgement.criteriaId]);
  return (
    <Workbench
      bead={bead}
      units={units}
      savedSetups={saved}
      lastSetup={last}
      setupStore={{ save: saveSetupAction, remove: deleteSetupAction }}
      shop={{ counts, sets, onReset: resetShopCountsAction }}
      onRunAgain={runAgain.bind(null, bead.id)}
      onChooseUnits={chooseUnitsAction}
    />
  );
}
