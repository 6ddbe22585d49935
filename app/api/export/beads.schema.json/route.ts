import { routeFor } from "@/app/_door/here";
import { beadsFileJsonSchema } from "@/lib/exchange";

export const dynamic = "force-dynamic";

/** The JSON Schema of beads.json. */
export async function GET(request: Request): Promise<Response> {
  const now = await routeFor(request, "data.export");
  if (now instanceof Response) return now;
  return Response.json(beadsFileJsonSchema(), { headers: { "content-type": "application/schema+json" } });
}
