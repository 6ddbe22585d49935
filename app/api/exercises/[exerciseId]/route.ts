import { pathRouteFor } from "@/app/_door/route-for";
import { issue, linesOf } from "@/lib/base";
import { getExercise } from "@/lib/classroom";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

/** One exercise, whole. */
export const GET = pathRouteFor<{ exerciseId: string }>(
  "course.read",
  async ({ db }, _request, { exerciseId }) => {
    const exercise = await getExercise(db, exerciseId);
    if (exercise) return Response.json(exercise);
    return Response.json({ issues: linesOf([issue("exercise-gone")], recordSentence) }, { status: 404 });
  },
);
