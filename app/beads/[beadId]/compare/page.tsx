import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { beadPageFor } from "@/app/_door/here";
import { OutcomeForm, SideBySide } from "@/components/report";
import { Header } from "@/components/shell";
import { assessContext, beadThing, getBead } from "@/lib/record";
import { compareSheets, outcomeWords, sheetDocument } from "@/lib/report";
import { lengthSystem } from "@/lib/units";
import { recordOutcomeAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Two beads side by side" };

interface Props {
  params: Promise<{ beadId: string }>;
  searchParams: Promise<{ with?: string }>;
}

/** This bead beside the one it was run after, or beside the one named by `?with=`. */
export default async function ComparePage({ params, searchParams }: Props) {
  const { beadId } = await params;
  const { db, may } = await beadPageFor("bead.read", beadId);
  const after = await getBead(db, beadId);
  const otherId = (await searchParams).with ?? after?.previous?.id;
  if (!after || !otherId) notFound();
  await beadPageFor("bead.read", otherId);
  const [before, units, context] = await Promise.all([
    getBead(db, otherId),
    currentUnits(),
    assessContext(db),
  ]);
  if (!before) notFound();
  const sheet = (bead: typeof after) => sheetDocument(bead, units.preferences, context);
  const [was, is] = [sheet(before), sheet(after)];
  const { tried, outcome } = after.content.judgement;
  const mayWrite = may("bead.write", (await beadThing(db, beadId)) ?? undefined);
  return (
    <>
      <Header>
        <Link href={`/beads/${after.id}`}>Back to the bead</Link>
      </Header>
      <SideBySide
        before={{ id: before.id, sheet: was }}
        after={{ id: after.id, sheet: is }}
        comparison={compareSheets(was, is)}
        tried={after.previous?.id === before.id ? tried : null}
        outcome={
          mayWrite ? (
            <OutcomeForm outcome={outcome} action={recordOutcomeAction.bind(null, beadId)} />
          ) : (
            <p>What the change did: {outcome ? outcomeWords[outcome].toLowerCase() : "not said yet"}.</p>
          )
        }
        system={lengthSystem(units.preferences.length)}
      />
    </>
  );
}
