import { pathRouteFor } from "@/app/_door/route-for";
import { issue, linesOf } from "@/lib/base";
import { getGroup } from "@/lib/roster";
import { recordSentence } from "@/lib/store";
import { groupJson } from "../group-json";

export const dynamic = "force-dynamic";

/** One group with its members, by name: what the right to read a course shows on its page too. */
export const GET = pathRouteFor<{ groupId: string }>("course.read", async ({ db }, _, { groupId }) => {
  const group = await getGroup(db, groupId);
  if (!group)
    return Response.json({ issues: linesOf([issue("group-gone")], recordSentence) }, { status: 404 });
  return Response.json({ ...groupJson(group), members: group.members });
});
