import { listPage } from "@/app/_door/list-page";
import { routeFor } from "@/app/_door/route-for";
import { personIdOf, reach } from "@/lib/people";
import { listTrials } from "@/lib/series";

export const dynamic = "force-dynamic";

/** Trials with their points and the beads run at them, newest first, a page at a time; of their own, for whoever sees only that. */
export const GET = routeFor("bead.read", async (now, request) => {
  const own = reach(now.actor, "bead.read") === "all" ? {} : { personId: personIdOf(now.actor) ?? "nobody" };
  const page = listPage(await listTrials(now.db, own), request);
  return page instanceof Response ? page : Response.json({ trials: page.rows, next: page.next });
});
