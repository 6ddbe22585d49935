import { routeFor } from "@/app/_door/route-for";
import { personIdOf, reach } from "@/lib/people";
import { listTrials } from "@/lib/series";

export const dynamic = "force-dynamic";

/** Every trial with its points and the beads run at them, newest first; of their own, for whoever sees only that. */
export const GET = routeFor("bead.read", async (now) => {
  const own = reach(now.actor, "bead.read") === "all" ? {} : { personId: personIdOf(now.actor) ?? "nobody" };
  return Response.json({ trials: await listTrials(now.db, own) });
});
