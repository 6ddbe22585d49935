import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { beadPageFor } from "@/app/_door/here";
import { OutcomeForm, SideBySide } from "@/components/report";
import { Header } from "@/components/shell";
import { beadThing, getBead, type BeadRecord } from "@/lib/beads";
import { assessContext } from "@/lib/shop";
import { alignPhotos, assessBead } from "@/lib/assess";
import { compareSheets, outcomeWords, sheetDocument } from "@/lib/report";
import { lengthSystem } from "@/lib/units";
import { recordOutcomeAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Two beads side by side" };

interface Props {
  params: Promise<{ beadId: string }>;
  searchParams: Promise<{ with?: string }>;
}

type Context = Awaited<ReturnType<typeof assessContext>>;
type Units = Awaited<ReturnType<typeof currentUnits>>;

function sideOf(bead: BeadRecord, context: Context, { preferences }: Units) {
  const assessed = assessBead(bead, context);
  return { id: bead.id, sheet: sheetDocument(assessed, preferences), aligned: alignPhotos(assessed) };
}

/** The two beads, each of which the person must be allowed to see. */
async function bothBeads({ params, searchParams }: Props) {
  const { beadId } = await params;
  const { db, may } = await beadPageFor("bead.read", beadId);
  const after = await getBead(db, beadId);
  const otherId = (await searchParams).with ?? after?.previous?.id;
  if (!after || !otherId) notFound();
  await beadPageFor("bead.read", otherId);
  const before = await getBead(db, otherId);
  if (!before) notFound();
  return { db, before, after, mayWrite: may("bead.write", (await beadThing(db, beadId)) ?? undefined) };
}

/** This bead beside the one it was run after, or beside the one named by `?with=`. */
export default async function ComparePage(props: Props) {
  const { db, before, after, mayWrite } = await bothBeads(props);
  const [units, context] = await Promise.all([currentUnits(), assessContext(db)]);
  const [was, is] = [sideOf(before, context, units), sideOf(after, context, units)];
  const { tried, outcome } = after.content.judgement;
  return (
    <>
      <Header>
        <Link href={`/beads/${after.id}`}>Back to the bead</Link>
      </Header>
      <SideBySide
        before={was}
        after={is}
        comparison={compareSheets(was.sheet, is.sheet)}
        tried={after.previous?.id === before.id ? tried : null}
        outcome={
          mayWrite ? (
            <OutcomeForm outcome={outcome} action={recordOutcomeAction.bind(null, after.id)} />
          ) : (
            <p>What the change did: {outcome ? outcomeWords[outcome].toLowerCase() : "not said yet"}.</p>
          )
        }
        system={lengthSystem(units.preferences.length)}
      />
    </>
  );
}
