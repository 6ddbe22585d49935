import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { beadPageFor } from "@/app/_door/here";
import { BenchCard, PdfLink, PrintButton } from "@/components/report";
import { Header } from "@/components/shell";
import { getBead } from "@/lib/beads";
import { assessContext } from "@/lib/shop";
import { assessBead } from "@/lib/assess";
import { benchCard } from "@/lib/report";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Bench card" };

interface Props {
  params: Promise<{ beadId: string }>;
}

export default async function CardPage({ params }: Props) {
  const { beadId } = await params;
  const { db } = await beadPageFor("bead.read", beadId);
  const [bead, units, context] = await Promise.all([getBead(db, beadId), currentUnits(), assessContext(db)]);
  if (!bead) notFound();
  return (
    <>
      <Header>
        <Link href={`/beads/${bead.id}`}>Back</Link>
        <PdfLink beadId={bead.id} paper="card" />
        <PrintButton />
      </Header>
      <BenchCard card={benchCard(assessBead(bead, context), units.preferences)} />
    </>
  );
}
