import type { Here } from "@/app/_door/here";
import { routeFor } from "@/app/_door/route-for";
import { measurePhotos } from "@/lib/assess";
import { csvHead, csvRows, markTable } from "@/lib/exchange";
import { askedBeads, download, slicesOf, type AskedBeads } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

/** The beads that fit the filter as CSV: one row per mark. */
export const GET = routeFor("data.export", async (now, request) => {
  const asked = askedBeads(now, request, "data.export");
  if (asked instanceof Response) return asked;
  return download(linesOf(now, asked), "text/csv; charset=utf-8; header=present", "toeline-marks.csv");
});

async function* linesOf(now: Here, asked: AskedBeads): AsyncGenerator<string> {
  yield csvHead(markTable([]).columns);
  for await (const slice of slicesOf(now, asked)) {
    const beads = slice.map(({ bead }) => ({ ...bead, measured: measurePhotos(bead.content, bead.photos) }));
    yield csvRows(markTable(beads));
  }
}
