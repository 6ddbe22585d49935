import { workInBackground, workNow } from "@/lib/beads";
import { returnedFeedbacks, type HandInRecord } from "@/lib/classroom";
import { foundByLayers, type ClassBead, type ReturnedFeedback } from "@/lib/course";
import type { Db } from "@/lib/db";
import { listedBeads, type ListedBead } from "@/lib/find";
import { assessContext } from "@/lib/shop";

export interface ClassBeads {
  readonly beads: readonly ClassBead[];
  /** Hand-ins whose bead is being worked out again, and which are therefore in no count. */
  readonly stale: number;
}

/** As many stale beads as a page waits for, some tenths of a second; what is beyond is worked out in the background. */
const WORTH_WAITING = 40;

/**
 * What a class is counted by, one row a hand-in, in the same order. `wait`: how many stale beads are worked out first; what is
 * printed waits for all of them, because paper is not read again later.
 */
export async function classBeads(
  db: Db,
  handIns: readonly HandInRecord[],
  wait = WORTH_WAITING,
): Promise<ClassBeads> {
  const { weighedBy } = await assessContext(db, []);
  const ids = handIns.map(({ beadId }) => beadId);
  const isStale = ({ said }: ListedBead): boolean => said?.weighedBy !== weighedBy;
  let listed = await listedBeads(db, ids);
  const stale = listed.filter(isStale).map(({ number }) => number);
  if (stale.length > 0) {
    await workNow(db, stale.slice(0, wait));
    listed = await listedBeads(db, ids);
    if (stale.length > wait) workInBackground(db, stale.slice(wait));
  }
  const answers = await returnedFeedbacks(
    db,
    handIns.map(({ id }) => id),
  );
  const byId = new Map(listed.filter((one) => !isStale(one)).map((one) => [one.id, one]));
  const beads = handIns.flatMap((handIn) => {
    const said = byId.get(handIn.beadId)?.said;
    return said ? [classBead(handIn, said, answers.get(handIn.id) ?? null)] : [];
  });
  return { beads, stale: listed.filter(isStale).length };
}

/** What the instructor drew and named counts as what was marked at the workbench does: nothing is marked twice. */
function classBead(
  { id, beadId, studentKey, exerciseId }: HandInRecord,
  { card, verdict }: NonNullable<ListedBead["said"]>,
  answer: ReturnedFeedback | null,
): ClassBead {
  const imperfections = [...new Set([...card.marks, ...(answer ? foundByLayers(answer.layers) : [])])];
  return {
    handInId: id,
    beadId,
    student: studentKey,
    exerciseId,
    returned: answer !== null,
    score: answer?.score.share ?? null,
    imperfections,
    looked: answer !== null || imperfections.length > 0 || card.lookedFor.length > 0,
    cause: card.cause,
    verdict,
  };
}
