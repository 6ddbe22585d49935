import { routeFor } from "@/app/_door/route-for";
import { linesOf } from "@/lib/base";
import { trendReport, trendSentence } from "@/lib/trends";
import { groupingOf } from "@/app/trends/grouping";
import { askedBeads, notUnderstood } from "../export/_asked/asked-beads";

export const dynamic = "force-dynamic";

/** The numbers behind the trends page, for the beads that fit the filter: `by` groups them, `period` cuts time. */
export const GET = routeFor("trends.read", async (now, request) => {
  const asked = await askedBeads(now, request, "trends.read");
  if (asked instanceof Response) return asked;
  const { by, period, unread } = groupingOf(asked.params);
  if (unread.length > 0) return notUnderstood(unread);
  const report = trendReport(asked.found, { period, by: by.keyOf, most: Infinity });
  const chart = report.chart.ok
    ? report.chart.value
    : { issues: linesOf(report.chart.issues, trendSentence) };
  return Response.json({ ...report, by: by.id, period, chart });
});
