import { currentUnits } from "@/app/_door/current-units";
import type { Here } from "@/app/_door/here";
import { getBead } from "@/lib/beads";
import { getExercise, getFeedback, getHandIn, listPhrases } from "@/lib/classroom";
import { personIdOf } from "@/lib/people";
import { getGroup } from "@/lib/roster";
import { assessContext } from "@/lib/shop";

/** The hand-in with all that stands beside it; null where it, its bead or its exercise is gone. */
export async function readAll({ db, actor }: Here, handInId: string) {
  const handIn = await getHandIn(db, handInId);
  if (!handIn) return null;
  const [bead, exercise, feedback, phrases, units, context] = await Promise.all([
    getBead(db, handIn.beadId),
    getExercise(db, handIn.exerciseId),
    getFeedback(db, handInId),
    listPhrases(db, personIdOf(actor)),
    currentUnits(),
    assessContext(db),
  ]);
  if (!bead || !exercise) return null;
  const group = await getGroup(db, exercise.group.id);
  return { handIn, bead, exercise, group, feedback, phrases, units, context };
}

export type Found = NonNullable<Awaited<ReturnType<typeof readAll>>>;
