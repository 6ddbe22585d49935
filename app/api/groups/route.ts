import { routeFor } from "@/app/_door/route-for";
import { listGroups } from "@/lib/roster";

export const dynamic = "force-dynamic";

/** Every group with its members by id and mark, running ones first. Names are for people who sign in, not for tokens. */
export const GET = routeFor("course.read", async ({ db }) => {
  const groups = (await listGroups(db)).map(({ members, ...group }) => ({
    ...group,
    members: members.map(({ id, mark }) => ({ id, mark })),
  }));
  return Response.json({ groups });
});
