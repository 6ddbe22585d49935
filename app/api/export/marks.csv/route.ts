import { routeFor } from "@/app/_door/route-for";
import { tableRoute } from "../_asked/asked-beads";

export const dynamic = "force-dynamic";

/** The beads that fit the filter as CSV: one row per mark. */
export const GET = routeFor(
  "data.export",
  tableRoute("marksCsv", "text/csv; charset=utf-8; header=present", "toeline-marks.csv"),
);
