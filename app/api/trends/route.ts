import { routeFor } from "@/app/_door/route-for";
import { groupingOf } from "@/app/trends/grouping";
import { linesOf } from "@/lib/base";
import { staleBeads, workInBackground } from "@/lib/beads";
import { trendCounts } from "@/lib/find";
import { trendFigures, trendSentence } from "@/lib/trends";
import { askedBeads, notUnderstood } from "../export/_asked/asked-beads";

export const dynamic = "force-dynamic";

/**
 * The numbers behind the trends page, for the beads that fit the filter: `by` groups them, `period` cuts time. `stale`:
 * beads that are being worked out again and therefore in none of the figures.
 */
export const GET = routeFor("trends.read", async (now, request) => {
  const asked = askedBeads(now, request, "trends.read");
  if (asked instanceof Response) return asked;
  const { by, period, unread } = groupingOf(asked.params);
  if (unread.length > 0) return notUnderstood(unread);
  const stale = await staleBeads(now.db, asked.scope);
  if (stale > 0) workInBackground(now.db);
  const counts = await trendCounts(now.db, asked.filter, asked.scope, by.column);
  const { rejected, undecided, ...figures } = trendFigures(counts, { period, most: Infinity });
  const chart = figures.chart.ok
    ? figures.chart.value
    : { issues: linesOf(figures.chart.issues, trendSentence) };
  return Response.json({ ...figures, rejects: { rejected, undecided }, stale, by: by.id, period, chart });
});
