import { routeFor } from "@/app/_door/route-for";
import { tableRoute } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

/** The beads that fit the filter as CSV: one row per bead. */
export const GET = routeFor(
  "data.export",
  tableRoute("beadsCsv", "text/csv; charset=utf-8; header=present", "toeline-beads.csv"),
);
