import { routeFor } from "@/app/_door/route-for";
import { listCriteria } from "@/lib/accept";
import { listShopSets, newestVersions } from "@/lib/shop";

export const dynamic = "force-dynamic";

/** Everything a bead can be judged by: the sets that come with the program, then every version of the shop's own. */
export const GET = routeFor("bead.read", async (now) => {
  const sets = await listShopSets(now.db);
  const newest = new Set(newestVersions(sets).map(({ id }) => id));
  const withdrawn = new Map(sets.map(({ id, withdrawnAt }) => [id, withdrawnAt]));
  const criteria = listCriteria(sets.map(({ content }) => content)).map(({ shop, ...set }) => ({
    ...set,
    shop: shop && { ...shop, newest: newest.has(set.id), withdrawnAt: withdrawn.get(set.id) ?? null },
  }));
  return Response.json({ criteria });
});
