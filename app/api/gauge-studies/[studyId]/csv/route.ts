import { pathRouteFor } from "@/app/_door/route-for";
import { issue, linesOf } from "@/lib/base";
import { csvHead, csvRows } from "@/lib/exchange";
import { studyFigures, studyTable } from "@/lib/gauge";
import { getStudy } from "@/lib/jobs";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

/** A study as CSV: every reading, then what came of them. */
export const GET = pathRouteFor<{ studyId: string }>("job.read", async (now, _request, { studyId }) => {
  const found = await getStudy(now.db, studyId);
  if (found === null)
    return Response.json({ issues: linesOf([issue("study-gone")], recordSentence) }, { status: 404 });
  const [columns = [], ...rows] = studyTable(found.study, studyFigures(found.study));
  const table = { columns: columns.map(String), rows };
  return new Response(csvHead(table.columns) + csvRows(table), {
    headers: {
      "content-type": "text/csv; charset=utf-8; header=present",
      "content-disposition": `attachment; filename="toeline-study-${found.study.on}.csv"`,
      "cache-control": "private, no-store",
    },
  });
});
