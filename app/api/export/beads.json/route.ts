import type { Here } from "@/app/_door/here";
import { routeFor } from "@/app/_door/route-for";
import { beadsFileText, type ExchangeBead } from "@/lib/exchange";
import { askedBeads, download, slicesOf, type AskedBeads } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

/** The beads that fit the filter as JSON by the schema published at /api/export/beads.schema.json. */
export const GET = routeFor("data.export", async (now, request) => {
  const asked = askedBeads(now, request, "data.export");
  if (asked instanceof Response) return asked;
  return download(beadsFileText(beadsOf(now, asked)), "application/json", "toeline-beads.json");
});

async function* beadsOf(now: Here, asked: AskedBeads): AsyncGenerator<readonly ExchangeBead[]> {
  for await (const slice of slicesOf(now, asked)) yield slice.map(({ bead }) => bead);
}
