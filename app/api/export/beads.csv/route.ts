import type { Here } from "@/app/_door/here";
import { routeFor } from "@/app/_door/route-for";
import { assessBead } from "@/lib/assess";
import { beadTable, csvHead, csvRows, judgedCells, type TableBead } from "@/lib/exchange";
import type { WholeBead } from "@/lib/find";
import { weldsNamed } from "@/lib/jobs";
import { assessContext, type ShopContext } from "@/lib/shop";
import { askedBeads, download, slicesOf, type AskedBeads } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

/** The beads that fit the filter as CSV: one row per bead. */
export const GET = routeFor("data.export", async (now, request) => {
  const asked = askedBeads(now, request, "data.export");
  if (asked instanceof Response) return asked;
  return download(linesOf(now, asked), "text/csv; charset=utf-8; header=present", "toeline-beads.csv");
});

async function* linesOf(now: Here, asked: AskedBeads): AsyncGenerator<string> {
  const context = await assessContext(now.db);
  yield csvHead(beadTable([]).columns);
  for await (const slice of slicesOf(now, asked)) {
    const welds = await weldsNamed(
      now.db,
      slice.map(({ bead }) => bead),
    );
    yield csvRows(
      beadTable(
        slice.map((one) => ({ ...judgedBead(one, context), liesOn: welds.get(one.bead.id) ?? null })),
      ),
    );
  }
}

/** What was kept of a bead's assessment stands in its row as long as it is current; otherwise it is worked out here. */
function judgedBead({ bead, said }: WholeBead, context: ShopContext): Omit<TableBead, "liesOn"> {
  const current = said !== null && said.weighedBy === context.weighedBy;
  return { ...bead, judged: current ? said.card.judged : judgedCells(assessBead(bead, context)) };
}
