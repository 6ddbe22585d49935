import type { Metadata } from "next";
import { benchProps } from "@/app/_door/bench-props";
import { pageFor } from "@/app/_door/here";
import { NewWorkbench } from "@/components/bead";
import {
  chooseUnitsAction,
  deleteSetupAction,
  resetShopCountsAction,
  runAgain,
  saveSetupAction,
} from "../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "New bead" };

/** An empty workbench. Which bead it becomes only the browser knows, and no record is made before there is something in it. */
export default async function NewBeadPage() {
  const now = await pageFor("bead.create");
  const { shop, ...bench } = await benchProps(now, null, []);
  return (
    <NewWorkbench
      {...bench}
      setupStore={{ save: saveSetupAction, remove: deleteSetupAction }}
      shop={{ ...shop, onReset: resetShopCountsAction }}
      onRunAgain={runAgain}
      onChooseUnits={chooseUnitsAction}
      mayDelete={now.may("bead.delete")}
    />
  );
}
