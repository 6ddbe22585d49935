import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { pageFor } from "@/app/_door/here";
import { WallPage } from "@/components/course";
import { PrintButton } from "@/components/report";
import { Header } from "@/components/shell";
import { buttonClass } from "@/components/ui";
import { getExercise } from "@/lib/classroom";
import { wallContent } from "../../wall-content";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Page for the wall" };

export default async function WallClassPage({ params }: { params: Promise<{ exerciseId: string }> }) {
  const now = await pageFor("course.read");
  const exercise = await getExercise(now.db, (await params).exerciseId);
  if (!exercise) notFound();
  return (
    <>
      <Header>
        <Link href={`/exercises/${exercise.id}`}>Back to the exercise</Link>
        <a
          className={buttonClass()}
          style={{ color: "var(--ink)" }}
          href={`/exercises/${exercise.id}/class.pdf`}
        >
          PDF
        </a>
        <PrintButton />
      </Header>
      <WallPage content={await wallContent(now.db, exercise)} />
    </>
  );
}
