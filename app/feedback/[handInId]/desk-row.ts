import type { Here } from "@/app/_door/here";
import type { DeskRow } from "@/components/course";
import { getBead } from "@/lib/beads";
import { listHandIns, waitingFor, type ExerciseRecord, type HandInRecord } from "@/lib/classroom";
import { personIdOf } from "@/lib/people";

/** Those that wait, this one among them, oldest first: of its exercise, its group or all. */
async function waitingIn({ db, actor }: Here, exercise: ExerciseRecord, row: string | undefined) {
  const only =
    row === "exercise" ? { exerciseId: exercise.id } : row === "group" ? { groupId: exercise.group.id } : {};
  return waitingFor(await listHandIns(db, only), personIdOf(actor));
}

/** Where a hand-in stands among those that wait, and what lies before and behind it. */
export async function deskRow(
  now: Here,
  handIn: HandInRecord,
  exercise: ExerciseRecord,
  row: string | undefined,
): Promise<DeskRow> {
  const waiting = await waitingIn(now, exercise, row);
  const at = waiting.findIndex(({ id }) => id === handIn.id);
  const href = (one: HandInRecord | undefined): string | null =>
    one ? `/feedback/${one.id}${row ? `?row=${row}` : ""}` : null;
  // Behind the last stands what was left out before it.
  const after = waiting[at + 1] ?? waiting.find(({ id }) => id !== handIn.id);
  const photo = after && (await getBead(now.db, after.beadId))?.photos[0];
  return {
    place: at + 1,
    of: waiting.length,
    previous: href(waiting[at - 1]),
    next: href(waiting[at + 1]),
    after: href(after),
    nextPhoto: photo ? `/api/photos/${photo.sha256}/view` : null,
  };
}
