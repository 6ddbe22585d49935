import { routeFor } from "@/app/_door/route-for";
import { serialiseBeadsFile } from "@/lib/exchange";
import { askedBeads, download } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

/** The beads that fit the filter as JSON by the schema published at /api/export/beads.schema.json. */
export const GET = routeFor("data.export", async (now, request) => {
  const asked = await askedBeads(now, request, "data.export");
  if (asked instanceof Response) return asked;
  const json = serialiseBeadsFile(asked.found.map(({ bead }) => bead));
  return download(json, "application/json", "toeline-beads.json");
});
