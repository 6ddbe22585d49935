import { listPage } from "@/app/_door/list-page";
import { routeFor } from "@/app/_door/route-for";
import { listGroups } from "@/lib/roster";
import { groupJson } from "./group-json";

export const dynamic = "force-dynamic";

/** Groups with their ids, a page at a time, so that a program finds members and gradebook. */
export const GET = routeFor("course.read", async ({ db }, request) => {
  const page = listPage(await listGroups(db), request);
  return page instanceof Response
    ? page
    : Response.json({ groups: page.rows.map(groupJson), next: page.next });
});
