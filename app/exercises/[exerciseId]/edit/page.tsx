import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor } from "@/app/_door/here";
import { ExerciseForm } from "@/components/course";
import { Header } from "@/components/shell";
import { page } from "@/components/ui";
import { getExercise } from "@/lib/classroom";
import { saveExerciseAction } from "../../actions";
import { formChoices } from "../../form-choices";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "Change exercise" };

export default async function EditExercisePage({ params }: { params: Promise<{ exerciseId: string }> }) {
  const now = await pageFor("course.write");
  const exercise = await getExercise(now.db, (await params).exerciseId);
  if (!exercise) notFound();
  const [choices, units] = await Promise.all([
    formChoices(now.db, exercise.content.criteriaId),
    currentUnits(),
  ]);
  const { title, content, open, withoutAccount, dueAt } = exercise;
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div>
          <p className={page.trail}>
            <Link href={`/exercises/${exercise.id}`}>Back to the exercise</Link>
          </p>
          <h1>Change the exercise</h1>
        </div>
        <ExerciseForm
          {...choices}
          units={units.preferences}
          initial={{ title, content, open, withoutAccount, dueAt }}
          save={saveExerciseAction.bind(null, exercise.id, exercise.revision)}
        />
      </main>
    </>
  );
}
