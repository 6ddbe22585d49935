import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor } from "@/app/_door/here";
import { BenchNotice } from "@/components/course";
import { PrintButton } from "@/components/report";
import { Header } from "@/components/shell";
import { startingSetup } from "@/lib/course";
import { getExercise } from "@/lib/classroom";
import { setupRows } from "@/lib/report";
import { handInAddress } from "../../hand-in-address";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Bench notice" };

export default async function NoticePage({ params }: { params: Promise<{ exerciseId: string }> }) {
  const now = await pageFor("course.read");
  const exercise = await getExercise(now.db, (await params).exerciseId);
  if (!exercise) notFound();
  const [{ address }, units] = await Promise.all([handInAddress(exercise.code), currentUnits()]);
  return (
    <>
      <Header>
        <Link href={`/exercises/${exercise.id}`}>Back to the exercise</Link>
        <PrintButton />
      </Header>
      <BenchNotice
        group={exercise.group.name}
        title={exercise.title}
        aim={exercise.content.aim}
        facts={setupRows(startingSetup(exercise.content), units.preferences)}
        code={exercise.code}
        address={address}
        due={exercise.dueAt}
      />
    </>
  );
}
