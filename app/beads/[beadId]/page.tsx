import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { Workbench } from "@/components/bead/workbench";
import { db } from "@/lib/db";
import { getBead, lastSetup, listSavedSetups, shopCounts } from "@/lib/record";
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
  const bead = await getBead(db(), (await params).beadId);
  return { title: bead ? `${bead.number} ${bead.content.title}` : "Nothing here" };
}

export default async function BeadPage({ params }: Props) {
  const { beadId } = await params;
  const [bead, units, saved, last, counts] = await Promise.all([
    getBead(db(), beadId),
    currentUnits(),
    listSavedSetups(db()),
    lastSetup(db(), beadId),
    shopCounts(db()),
  ]);
  if (!bead) notFound();
  return (
    <Workbench
      bead={bead}
      units={units}
      savedSetups={saved}
      lastSetup={last}
      setupStore={{ save: saveSetupAction, remove: deleteSetupAction }}
      shop={{ counts, onReset: resetShopCountsAction }}
      onRunAgain={runAgain.bind(null, bead.id)}
      onChooseUnits={chooseUnitsAction}
    />
  );
}
