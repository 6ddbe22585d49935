import {
  listExercises,
  listHandIns,
  returnedFeedbacks,
  type ExerciseRecord,
  type HandInRecord,
} from "@/lib/classroom";
import { gradebook, type Gradebook, type GradedHandIn, type ReturnedFeedback } from "@/lib/course";
import type { Db } from "@/lib/db";
import { getGroup, type GroupRecord } from "@/lib/roster";

export interface GradeStudent {
  readonly key: string;
  /** null: the name was removed. */
  readonly name: string | null;
  readonly mark: string | null;
  /** The person; null where a typed name belongs to nobody yet. */
  readonly personId: string | null;
}

export interface ClassGrades {
  readonly group: GroupRecord;
  /** Oldest first. */
  readonly exercises: readonly ExerciseRecord[];
  /** Members by name, then whoever else handed in. */
  readonly students: readonly GradeStudent[];
  readonly book: Gradebook;
}

/** A group's gradebook as it stands; null where there is no such group. */
export async function classGrades(db: Db, groupId: string): Promise<ClassGrades | null> {
  const group = await getGroup(db, groupId);
  if (!group) return null;
  const [newestFirst, handIns] = await Promise.all([
    listExercises(db, { groupId }),
    listHandIns(db, { groupId }),
  ]);
  const exercises = newestFirst.toReversed();
  const answers = await returnedFeedbacks(
    db,
    handIns.map(({ id }) => id),
  );
  const graded = handIns.map((handIn) => gradedOf(handIn, answers.get(handIn.id)));
  const members = group.members.map(({ id, name, mark }) => ({ key: id, name, mark, personId: id }));
  const others = new Map(
    handIns
      .filter(({ studentKey }) => !members.some(({ key }) => key === studentKey))
      .map(({ studentKey, student, personId }) => [
        studentKey,
        { key: studentKey, name: student, mark: null, personId },
      ]),
  );
  const students = [...members, ...others.values()];
  const book = gradebook(
    students.map(({ key }) => key),
    exercises.map(({ id }) => id),
    graded,
  );
  return { group, exercises, students, book };
}

function gradedOf(
  { id, studentKey, exerciseId, handedInAt, late, feedback }: HandInRecord,
  answer: ReturnedFeedback | undefined,
): GradedHandIn {
  return {
    handInId: id,
    student: studentKey,
    exerciseId,
    handedInAt,
    late,
    state: answer ? (feedback?.seenAt ? "seen" : "returned") : "waiting",
    score: answer?.score ?? null,
    rubric: answer?.rubric ?? [],
    marks: answer?.marks ?? {},
  };
}
