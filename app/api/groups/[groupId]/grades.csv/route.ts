import { pathRouteFor } from "@/app/_door/route-for";
import { csvHead, csvRows } from "@/lib/exchange";
import { classGrades } from "@/app/groups/class-grades";
import { gradeTable } from "@/app/groups/grade-tables";

export const dynamic = "force-dynamic";

/** A group's gradebook as CSV. */
export const GET = pathRouteFor<{ groupId: string }>("course.read", async (now, _, { groupId }) => {
  const grades = await classGrades(now.db, groupId);
  if (!grades) return new Response("No such group.", { status: 404 });
  const table = gradeTable(grades);
  return new Response(csvHead(table.columns) + csvRows(table), {
    headers: {
      "content-type": "text/csv; charset=utf-8; header=present",
      "content-disposition": `attachment; filename="toeline-grades.csv"`,
      "cache-control": "private, no-store",
    },
  });
});
