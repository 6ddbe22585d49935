import type { Metadata } from "next";
import { PlanDesk } from "@/components/plan";
import { Header, UnitSwitch } from "@/components/shell";
import { page } from "@/components/ui";
import { readPlanQuery } from "@/lib/plan";
import { chooseUnitsAction } from "../beads/actions";
import { asParams } from "../filter-questions";
import { currentUnits } from "../_door/current-units";
import { pageFor } from "../_door/here";
import { startFromPlan } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Plan a run" };

interface Search {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function PlanPage({ searchParams }: Search) {
  const now = await pageFor("bead.read");
  const units = await currentUnits();
  const ask = readPlanQuery(asParams(await searchParams));
  return (
    <>
      <Header>
        <UnitSwitch choice={units.choice} onChoose={chooseUnitsAction} />
      </Header>
      <main className={page.wide}>
        <h1>Plan a run</h1>
        <PlanDesk
          start={ask}
          units={units.preferences}
          onStart={now.may("bead.create") ? startFromPlan : null}
        />
      </main>
    </>
  );
}
