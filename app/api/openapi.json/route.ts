import { routeFor } from "@/app/_door/here";
import { openApiDocument } from "./document";

export const dynamic = "force-dynamic";

/** What machines may ask for, as an OpenAPI 3.1 document. */
export async function GET(request: Request): Promise<Response> {
  const now = await routeFor(request, "bead.read");
  return now instanceof Response ? now : Response.json(openApiDocument());
}
