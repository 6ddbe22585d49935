import type { ShownExercise } from "@/components/course";
import { listExercises, listHandIns, returnedFeedbacks } from "@/lib/classroom";
import { foundByLayers, scoreText } from "@/lib/course";
import type { Db } from "@/lib/db";
import { jointWords, positionWords } from "@/lib/report";
import { listGroups } from "@/lib/roster";
import { imperfections } from "@/lib/trade";

/** What somebody handed in, oldest first, as it was answered; what waits is said to wait. */
export async function shownWhen(
  db: Db,
  personId: string,
): Promise<{ readonly groups: readonly string[]; readonly shown: readonly ShownExercise[] }> {
  const [handIns, exercises, groups] = await Promise.all([
    listHandIns(db, { personId }),
    listExercises(db),
    listGroups(db),
  ]);
  const answers = await returnedFeedbacks(
    db,
    handIns.map(({ id }) => id),
  );
  const shown = handIns.map(({ id, exerciseId, exerciseTitle, attempt, handedInAt }) => {
    const answer = answers.get(id);
    const asked = exercises.find((one) => one.id === exerciseId)?.content;
    const { joint = null, position = null, electrodeClass = null } = asked ?? {};
    return {
      id,
      title: exerciseTitle,
      asked: [joint && jointWords[joint], position && positionWords[position], electrodeClass]
        .filter((part) => part !== null)
        .join(", "),
      attempt,
      handedInAt,
      returnedAt: answer?.returnedAt ?? null,
      score: answer ? scoreText(answer.score) : null,
      found: answer ? foundByLayers(answer.layers).map((kind) => imperfections[kind].name) : [],
    };
  });
  const own = groups.filter(({ members }) => members.some((member) => member.id === personId));
  return { groups: own.map(({ name }) => name), shown };
}
