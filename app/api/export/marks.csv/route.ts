import { routeFor } from "@/app/_door/route-for";
import { markTable, tableToCsv } from "@/lib/exchange";
import { askedBeads, download } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

/** The beads that fit the filter as CSV: one row per mark. */
export const GET = routeFor("data.export", async (now, request) => {
  const asked = await askedBeads(now, request, "data.export");
  if (asked instanceof Response) return asked;
  const csv = tableToCsv(markTable(asked.found.map(({ assessed }) => assessed)));
  return download(csv, "text/csv; charset=utf-8; header=present", "toeline-marks.csv");
});
