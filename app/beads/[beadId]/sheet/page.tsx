import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { beadPageFor, here } from "@/app/_door/here";
import { PdfLink, PrintButton, SharePdf, Sheet } from "@/components/report";
import { Header } from "@/components/shell";
import { beadThing, getBead } from "@/lib/beads";
import { assessContext } from "@/lib/shop";
import { assessBead } from "@/lib/assess";
import { sheetDocument } from "@/lib/report";

export const dynamic = "force-dynamic";

interface Props {
  params: Promise<{ beadId: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const { beadId } = await params;
  const now = await here();
  const thing = await beadThing(now.db, beadId);
  const bead = thing && now.may("bead.read", thing) ? await getBead(now.db, beadId) : null;
  return { title: bead ? `Sheet ${bead.number} ${bead.content.title}` : "Nothing here" };
}

export default async function SheetPage({ params }: Props) {
  const { beadId } = await params;
  const now = await beadPageFor("bead.read", beadId);
  const [bead, units, context] = await Promise.all([
    getBead(now.db, beadId),
    currentUnits(),
    assessContext(now.db),
  ]);
  if (!bead) notFound();
  return (
    <>
      <Header>
        <Link href={`/beads/${bead.id}`} aria-label="Back to the bead">
          Back
        </Link>
        <PdfLink beadId={bead.id} />
        <SharePdf beadId={bead.id} number={bead.number} />
        <PrintButton />
      </Header>
      <main>
        <Sheet sheet={sheetDocument(assessBead(bead, context), units.preferences)} />
      </main>
    </>
  );
}
