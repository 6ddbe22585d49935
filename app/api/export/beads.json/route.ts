import { routeFor } from "@/app/_door/route-for";
import { tableRoute } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

/** The beads that fit the filter as JSON by the schema published at /api/export/beads.schema.json. */
export const GET = routeFor("data.export", tableRoute("beadsJson", "application/json", "toeline-beads.json"));
