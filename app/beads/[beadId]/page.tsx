import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { Workbench } from "@/components/bead/workbench";
import { db } from "@/lib/db";
import { getBead, lastSetup, listSavedSetups } from "@/lib/record";
import { chooseUnitsAction, deleteSetupAction, saveSetupAction } from "../actions";

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
  const [bead, units, saved, last] = await Promise.all([
    getBead(db(), beadId),
    currentUnits(),
    listSavedSetups(db()),
    lastSetup(db(), beadId),
  ]);
  if (!bead) notFound();
  return (
    <Workbench
      bead={bead}
      units={units}
      savedSetups={saved}
      lastSetup={last}
      setupStore={{ save: saveSetupAction, remove: deleteSetupAction }}
      onChooseUnits={chooseUnitsAction}
    />
  );
}
