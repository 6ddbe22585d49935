import { routeFor } from "@/app/_door/route-for";
import { beadsFileJsonSchema } from "@/lib/exchange";

export const dynamic = "force-dynamic";

/** The JSON Schema of beads.json. */
export const GET = routeFor("data.export", () => {
  return Response.json(beadsFileJsonSchema(), { headers: { "content-type": "application/schema+json" } });
});
