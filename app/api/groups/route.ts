import { routeFor } from "@/app/_door/route-for";
import { listGroups } from "@/lib/roster";

export const dynamic = "force-dynamic";

/** Every group with its id, so that a program finds its gradebook. */
export const GET = routeFor("course.read", async ({ db }) => {
  const groups = (await listGroups(db)).map(({ id, name, closedAt, members, exercises }) => ({
    id,
    name,
    closedAt,
    students: members.length,
    exercises,
  }));
  return Response.json({ groups });
});
