import { pathRouteFor } from "@/app/_door/route-for";
import { classGrades } from "@/app/groups/class-grades";
import { gradeJson } from "@/app/groups/grade-tables";

export const dynamic = "force-dynamic";

/** A group's gradebook: students by exercises. */
export const GET = pathRouteFor<{ groupId: string }>("course.read", async (now, _, { groupId }) => {
  const grades = await classGrades(now.db, groupId);
  if (grades) return Response.json(gradeJson(grades));
  const issues = [{ code: "group-gone", message: "There is no such group." }];
  return Response.json({ issues }, { status: 404 });
});
