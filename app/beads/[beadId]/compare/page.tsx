import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { beadPageFor } from "@/app/_door/here";
import { SideBySide } from "@/components/report/side-by-side";
import { Header } from "@/components/shell/header";
import { defaultAssessContext } from "@/lib/assess";
import { getBead, shopCounts } from "@/lib/record";
import { compareSheets, sheetDocument } from "@/lib/report";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Two beads side by side" };

interface Props {
  params: Promise<{ beadId: string }>;
  searchParams: Promise<{ with?: string }>;
}

/** This bead beside the one it was run after, or beside the one named by `?with=`. */
export default async function ComparePage({ params, searchParams }: Props) {
  const { beadId } = await params;
  const { db } = await beadPageFor("bead.read", beadId);
  const after = await getBead(db, beadId);
  const otherId = (await searchParams).with ?? after?.previous?.id;
  if (!after || !otherId) notFound();
  await beadPageFor("bead.read", otherId);
  const [before, units, counts] = await Promise.all([getBead(db, otherId), currentUnits(), shopCounts(db)]);
  if (!before) notFound();
  const sheet = (bead: typeof after) =>
    sheetDocument(bead, units.preferences, { ...defaultAssessContext, shopCounts: counts });
  const [was, is] = [sheet(before), sheet(after)];
  return (
    <>
      <Header>
        <Link href={`/beads/${after.id}`}>Back to the bead</Link>
      </Header>
      <SideBySide
        before={{ id: before.id, sheet: was }}
        after={{ id: after.id, sheet: is }}
        comparison={compareSheets(was, is)}
      />
    </>
  );
}
