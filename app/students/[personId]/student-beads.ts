import type { Here } from "@/app/_door/here";
import type { StudentBead } from "@/components/course";
import { getBeads, workNow } from "@/lib/beads";
import { listExercises, listHandIns, returnedFeedbacks, type ExerciseRecord } from "@/lib/classroom";
import { foundByLayers, scoreText, startingSetup, type BeadLikeness } from "@/lib/course";
import { findPage, type ListedBead, type PageAt } from "@/lib/find";
import { assessContext } from "@/lib/shop";

/** Oldest first, each with what it shows, whether it was handed in and how it was answered. */
export async function studentBeads({ db }: Here, personId: string): Promise<readonly StudentBead[]> {
  const [listed, handIns, exercises] = await Promise.all([
    currentBeads(db, personId),
    listHandIns(db, { personId }),
    listExercises(db),
  ]);
  const answers = await returnedFeedbacks(
    db,
    handIns.map(({ id }) => id),
  );
  const whole = await getBeads(
    db,
    listed.map(({ id }) => id),
  );
  const setupOf = new Map(whole.map(({ id, content }) => [id, content.setup]));
  const handInOf = new Map(handIns.map((one) => [one.beadId, one]));
  return listed.flatMap(({ id, number, title, createdAt, thumbSha256, said }) => {
    if (said === null) return [];
    const handIn = handInOf.get(id) ?? null;
    const answer = (handIn && answers.get(handIn.id)) ?? null;
    const exercise = exercises.find((one) => one.id === handIn?.exerciseId);
    const { card, verdict } = said;
    return {
      beadId: id,
      number,
      title,
      createdAt,
      photo: thumbSha256,
      exerciseId: handIn?.exerciseId ?? null,
      likeness: likenessOf(setupOf.get(id), exercise),
      lookedFor: card.lookedFor,
      imperfections: [...new Set([...card.marks, ...(answer ? foundByLayers(answer.layers) : [])])],
      verdict,
      cause: card.cause?.name ?? null,
      score: answer?.score.share ?? null,
      scoreWords: answer ? scoreText(answer.score) : "",
      feedback: handIn && { handInId: handIn.id, returned: answer !== null },
    };
  });
}

/** What the bead says of itself; where it says nothing, what its exercise asked for. */
function likenessOf(own: BeadLikeness | undefined, exercise: ExerciseRecord | undefined): BeadLikeness {
  const asked = exercise && startingSetup(exercise.content);
  return {
    joint: own?.joint ?? asked?.joint ?? null,
    position: own?.position ?? asked?.position ?? null,
    electrodeClass: own?.electrodeClass ?? asked?.electrodeClass ?? null,
  };
}

/** One person's beads, oldest first, none of them stale: a step from bead to bead would skip one that says nothing. */
async function currentBeads(db: Here["db"], welderId: string): Promise<readonly ListedBead[]> {
  const { weighedBy } = await assessContext(db, []);
  const read = async (): Promise<ListedBead[]> => {
    const all: ListedBead[] = [];
    for (let at: PageAt = "start"; ;) {
      const { beads, next } = await findPage(db, { sort: "oldest" }, { welderId }, { at, size: 200 });
      all.push(...beads);
      if (next === null) return all;
      at = { after: next };
    }
  };
  const beads = await read();
  const stale = beads.filter(({ said }) => said?.weighedBy !== weighedBy).map(({ number }) => number);
  if (stale.length === 0) return beads;
  await workNow(db, stale);
  return read();
}
