import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { CardForm } from "@/components/cards";
import { Header } from "@/components/shell";
import { page } from "@/components/ui";
import { currentUnits } from "@/app/_door/current-units";
import { beadPageFor, pageFor } from "@/app/_door/here";
import { runsOf, thingOfTrial } from "@/app/_door/series";
import { asParams } from "@/app/filter-questions";
import { getBead } from "@/lib/beads";
import { CardSchema, proposeRanges, type Card } from "@/lib/cards";
import { db } from "@/lib/db";
import { onDial } from "@/lib/plan";
import { trialSheet } from "@/lib/report";
import { getTrial } from "@/lib/series";
import { setupAt } from "@/lib/trials";
import type { UnitPreferences } from "@/lib/units";
import { makeCardAction } from "../actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "New card" };

interface Props {
  readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
}

async function fromBead(beadId: string): Promise<Card | null> {
  const { db } = await beadPageFor("bead.read", beadId);
  const bead = await getBead(db, beadId);
  if (bead === null) return null;
  const { setup } = bead.content;
  return CardSchema.parse({
    title: bead.content.title,
    setup,
    ranges: proposeRanges(setup),
    code: "aws-d1-1",
    from: { kind: "bead", number: bead.number },
  });
}

/** What a trial showed: its best region for its knobs, about what was run for the rest. */
async function fromTrial(trialId: string, units: UnitPreferences): Promise<Card | null> {
  const now = await pageFor("bead.read", await thingOfTrial(db(), trialId));
  const trial = await getTrial(now.db, trialId);
  if (trial === null) return null;
  const { content, number } = trial;
  const { course } = trialSheet(trial, await runsOf(now.db, trial), units);
  const all = course.filter(({ mayBeBest }) => mayBeBest);
  // Where everything may be best the beads say nothing of a range.
  const region = all.length < course.length ? all : [];
  const known = content.knobs.flatMap(({ field }, i) => {
    const values = region.map(({ at }) => at[i]!);
    return values.length === 0 ? [] : [{ field, low: Math.min(...values), high: Math.max(...values) }];
  });
  const middle = known.map(({ field, low, high }) => onDial(content.dials, field, (low + high) / 2));
  const setup = known.length === 0 ? content.base : setupAt(content, middle);
  return CardSchema.parse({
    title: content.title,
    setup,
    ranges: proposeRanges(setup, known),
    code: "aws-d1-1",
    from: { kind: "trial", number },
  });
}

export default async function NewCardPage({ searchParams }: Props) {
  await pageFor("bead.create");
  const params = asParams(await searchParams);
  const [beadId, trialId] = [params.get("bead"), params.get("trial")];
  const { preferences } = await currentUnits();
  const start = beadId ? await fromBead(beadId) : trialId ? await fromTrial(trialId, preferences) : null;
  if (start === null) redirect("/cards");
  return (
    <>
      <Header />
      <main className={`${page.page} ${page.column}`}>
        <h1>New card</h1>
        <p>A shop’s card, not a qualified procedure: how a run is made here, with ranges to stay in.</p>
        <CardForm start={start} units={preferences} onMake={makeCardAction} />
      </main>
    </>
  );
}
