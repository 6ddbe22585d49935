import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { pageFor } from "@/app/_door/here";
import { TrainingRecord } from "@/components/course";
import { PrintButton } from "@/components/report";
import { Header } from "@/components/shell";
import { getPerson } from "@/lib/roster";
import { shownWhen } from "./shown-when";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Training record" };

/** What one person was asked, showed and was told, with the days; to be printed. */
export default async function RecordPage({ params }: { params: Promise<{ personId: string }> }) {
  const { personId } = await params;
  const now = await pageFor("bead.read", { personId });
  const person = await getPerson(now.db, personId);
  if (!person) notFound();
  return (
    <>
      <Header>
        <Link href={`/students/${personId}`}>Back</Link>
        <PrintButton />
      </Header>
      <TrainingRecord name={person.name} mark={person.mark} {...await shownWhen(now.db, personId)} />
    </>
  );
}
