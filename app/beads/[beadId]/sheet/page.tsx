import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { PdfLink } from "@/components/report/pdf-link";
import { PrintButton } from "@/components/report/print-button";
import { Sheet } from "@/components/report/sheet";
import { Header } from "@/components/shell/header";
import { defaultAssessContext } from "@/lib/assess";
import { db } from "@/lib/db";
import { getBead, shopCounts } from "@/lib/record";
import { sheetDocument } from "@/lib/report";

export const dynamic = "force-dynamic";

interface Props {
  params: Promise<{ beadId: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const bead = await getBead(db(), (await params).beadId);
  return { title: bead ? `Sheet ${bead.number} ${bead.content.title}` : "Nothing here" };
}

export default async function SheetPage({ params }: Props) {
  const { beadId } = await params;
  const [bead, units, counts] = await Promise.all([getBead(db(), beadId), currentUnits(), shopCounts(db())]);
  if (!bead) notFound();
  return (
    <>
      <Header>
        <Link href={`/beads/${bead.id}`}>Back to the bead</Link>
        <PdfLink beadId={bead.id} />
        <PrintButton />
      </Header>
      <Sheet
        sheet={sheetDocument(bead, units.preferences, { ...defaultAssessContext, shopCounts: counts })}
      />
    </>
  );
}
