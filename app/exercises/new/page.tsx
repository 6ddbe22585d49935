import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { currentUnits } from "@/app/_door/current-units";
import { pageFor } from "@/app/_door/here";
import { ExerciseForm } from "@/components/course";
import { Header } from "@/components/shell";
import { page } from "@/components/ui";
import { emptyExercise } from "@/lib/course";
import { getGroup } from "@/lib/roster";
import { createExerciseAction } from "../actions";
import { formChoices } from "../form-choices";

export const dynamic = "force-dynamic";
export const metadata: Metadata = { title: "New exercise" };

export default async function NewExercisePage({
  searchParams,
}: {
  searchParams: Promise<{ group?: string }>;
}) {
  const now = await pageFor("course.write");
  const group = await getGroup(now.db, (await searchParams).group ?? "");
  if (!group) notFound();
  const [choices, units] = await Promise.all([formChoices(now.db), currentUnits()]);
  return (
    <>
      <Header />
      <main className={page.wide}>
        <div>
          <p className={page.trail}>
            <Link href={`/groups/${group.id}`}>{group.name}</Link>
          </p>
          <h1>New exercise</h1>
        </div>
        <ExerciseForm
          {...choices}
          units={units.preferences}
          initial={{ title: "", content: emptyExercise, open: true, withoutAccount: true, dueAt: null }}
          save={createExerciseAction.bind(null, group.id)}
        />
      </main>
    </>
  );
}
