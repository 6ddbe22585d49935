import { routeFor } from "@/app/_door/route-for";
import { openApiDocument } from "./document";

export const dynamic = "force-dynamic";

/** What machines may ask for, as an OpenAPI 3.1 document. */
export const GET = routeFor("bead.read", () => {
  return Response.json(openApiDocument());
});
