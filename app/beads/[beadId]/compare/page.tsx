import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { compareSides } from "@/app/_door/compare-sides";
import { beadPageFor } from "@/app/_door/here";
import { OutcomeForm, SideBySide } from "@/components/report";
import { Header } from "@/components/shell";
import { beadThing, getBead } from "@/lib/beads";
import { outcomeWords } from "@/lib/report";
import { recordOutcomeAction } from "./actions";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Two beads side by side" };

interface Props {
  params: Promise<{ beadId: string }>;
  searchParams: Promise<{ with?: string }>;
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
  const sides = await compareSides(db, before, after);
  const { tried, outcome } = after.content.judgement;
  return (
    <>
      <Header>
        <Link href={`/beads/${after.id}`}>Back to the bead</Link>
        <Link href={`/compare?pick=${after.id}`}>Beside another bead</Link>
      </Header>
      <SideBySide
        {...sides}
        tried={after.previous?.id === before.id ? tried : null}
        outcome={
          mayWrite ? (
            <OutcomeForm outcome={outcome} action={recordOutcomeAction.bind(null, after.id)} />
          ) : (
            <p>What the change did: {outcome ? outcomeWords[outcome].toLowerCase() : "not said yet"}.</p>
          )
        }
      />
    </>
  );
}
