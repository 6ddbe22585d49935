import Link from "next/link";
import type { Here } from "@/app/_door/here";
import { buttonClass, LocalTime, page } from "@/components/ui";
import { listExercises, listHandIns, type ExerciseRecord, type HandInRecord } from "@/lib/classroom";
import { handInStateWords } from "@/lib/course";
import { listGroups } from "@/lib/roster";

/** The exercises of somebody's groups: what is due first, then those without a date, then what is closed and was handed in. */
export async function ExercisesDue({ now, personId, own }: { now: Here; personId: string; own: boolean }) {
  const groups = (await listGroups(now.db)).filter(({ members }) =>
    members.some(({ id }) => id === personId),
  );
  const exercises = (
    await Promise.all(groups.map(({ id }) => listExercises(now.db, { groupId: id })))
  ).flat();
  const handIns = await listHandIns(now.db, { personId });
  const shown = exercises
    .map((exercise) => ({ exercise, tries: handIns.filter(({ exerciseId }) => exerciseId === exercise.id) }))
    .filter(({ exercise, tries }) => takes(exercise) || tries.length > 0)
    .toSorted((a, b) => order(a.exercise).localeCompare(order(b.exercise)));
  if (shown.length === 0) return <p>{own ? "No exercise waits for you." : "No exercise yet."}</p>;
  return (
    <section aria-label="Exercises" className={page.stack}>
      <h2>Exercises</h2>
      <ul className={page.list}>
        {shown.map(({ exercise, tries }) => (
          <li key={exercise.id} className={page.item}>
            <div>
              <h3>{exercise.title}</h3>
              <p className={page.note}>
                {exercise.group.name}
                {exercise.dueAt && (
                  <>
                    {" · due "}
                    <LocalTime iso={exercise.dueAt} zone />
                  </>
                )}
                {!takes(exercise) && " · closed"}
              </p>
              <Tries tries={tries} />
            </div>
            {own && takes(exercise) && (
              <Link
                className={buttonClass(tries.length === 0 ? "main" : "plain")}
                href={`/hand-in/${exercise.code}`}
              >
                {tries.length === 0 ? "Hand in" : `Hand in attempt ${tries.length + 1}`}
              </Link>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

const takes = ({ open, group }: ExerciseRecord): boolean => open && !group.closed;

/** Due first by its day, then without a date, then closed. */
const order = (exercise: ExerciseRecord): string =>
  takes(exercise) ? (exercise.dueAt ?? "A") : `B${exercise.dueAt ?? ""}`;

function Tries({ tries }: { tries: readonly HandInRecord[] }) {
  if (tries.length === 0) return <p>{handInStateWords["not-handed-in"]}</p>;
  return (
    <p>
      {tries.map(({ id, attempt, feedback }) => (
        <Link key={id} className={page.lead} href={`/feedback/${id}`}>
          {`Attempt ${attempt}: ${feedback?.returnedAt ? (feedback.seenAt ? "feedback" : "new feedback") : "waiting"}`}
          &ensp;
        </Link>
      ))}
    </p>
  );
}
