import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { benchProps } from "@/app/_door/bench-props";
import { beadPageFor, here, thingOfBead } from "@/app/_door/here";
import { Workbench } from "@/components/bead";
import { beadThing, getBead } from "@/lib/beads";
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
  const bead = await getBead(now.db, beadId);
  if (!bead) notFound();
  const { shop, ...bench } = await benchProps(now, beadId, [bead.content.judgement.criteriaId]);
  return (
    <Workbench
      bead={bead}
      {...bench}
      setupStore={{ save: saveSetupAction, remove: deleteSetupAction }}
      shop={{ ...shop, onReset: resetShopCountsAction }}
      onRunAgain={runAgain}
      onChooseUnits={chooseUnitsAction}
      mayDelete={now.may("bead.delete", await thingOfBead(beadId))}
    />
  );
}
