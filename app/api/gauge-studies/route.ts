import { listPage } from "@/app/_door/list-page";
import { routeFor } from "@/app/_door/route-for";
import { listStudies } from "@/lib/jobs";
import { studyJson } from "./study-json";

export const dynamic = "force-dynamic";

/** Studies of gauges with what came of each, the newest day first, a page at a time. */
export const GET = routeFor("job.read", async (now, request) => {
  const page = listPage(await listStudies(now.db), request);
  return page instanceof Response
    ? page
    : Response.json({ studies: page.rows.map(studyJson), next: page.next });
});
