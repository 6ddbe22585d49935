import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Header } from "@/components/shell";
import { TrialForm } from "@/components/trials";
import { page } from "@/components/ui";
import { beadPageFor, pageFor } from "@/app/_door/here";
import { asParams } from "@/app/filter-questions";
import { planAsked } from "@/app/plan/plan-asked";
import { currentUnits } from "@/app/_door/current-units";
import { getBead } from "@/lib/beads";
import { planQuery, planRun, turnedRange } from "@/lib/plan";
import { setupLine } from "@/lib/report";
import { trialKnobs } from "@/lib/trials";
import { makeTrialAction } from "../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "New trial" };

interface Props {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

/** The set-up a trial begins from: of the bead that is named, or of the plan that the address asks for. */
async function beginning(params: URLSearchParams) {
  const beadId = params.get("bead");
  if (beadId !== null) {
    const { db } = await beadPageFor("bead.read", beadId);
    const bead = await getBead(db, beadId);
    return bead && { setup: bead.content.setup, title: `Trial from bead ${bead.number}` };
  }
  const { ask, units } = await planAsked(params);
  const planned = planRun(ask);
  if (!planned.ok) redirect(`/plan?${planQuery(ask)}`);
  return { setup: planned.value.setup, title: setupLine(planned.value.setup, units) };
}

export default async function NewTrialPage({ searchParams }: Props) {
  await pageFor("bead.create");
  const from = await beginning(asParams(await searchParams));
  if (from === null) redirect("/trials");
  const { preferences, choice } = await currentUnits();
  const { setup, title } = from;
  const offers = trialKnobs.flatMap((field) => {
    const range = turnedRange(setup, field, choice);
    return range === null || range.high <= range.low ? [] : [{ field, ...range }];
  });
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.column}`}>
        <h1>New trial</h1>
        <p>
          {setupLine(setup, preferences)}. All beads of it are run with this set-up, but for the knobs chosen
          here.
        </p>
        {offers.length === 0 && (
          <p role="alert">
            This set-up does not lie inside known rows of its wire, or too little of it is known, so nobody
            can say how far a knob may be turned. Plan the run first, and begin from the plan.
          </p>
        )}
        <TrialForm
          base={setup}
          title={title.slice(0, 120)}
          offers={offers}
          units={preferences}
          onMake={makeTrialAction}
        />
      </main>
    </>
  );
}
