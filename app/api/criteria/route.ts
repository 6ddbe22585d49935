import { routeFor } from "@/app/_door/route-for";
import { listPage } from "@/app/_door/list-page";
import { readJson } from "@/app/_door/read-json";
import { listCriteria } from "@/lib/accept";
import { listShopSets, newestVersions } from "@/lib/shop";
import { saveByProgram } from "./shop-door";

export const dynamic = "force-dynamic";

/** Everything a bead can be judged by: the sets that come with the program, then every version of the shop's own; a page at a time. */
export const GET = routeFor("bead.read", async (now, request) => {
  const sets = await listShopSets(now.db);
  const newest = new Set(newestVersions(sets).map(({ id }) => id));
  const withdrawn = new Map(sets.map(({ id, withdrawnAt }) => [id, withdrawnAt]));
  const criteria = listCriteria(sets.map(({ content }) => content)).map(({ shop, ...set }) => ({
    ...set,
    shop: shop && { ...shop, newest: newest.has(set.id), withdrawnAt: withdrawn.get(set.id) ?? null },
  }));
  const page = listPage(criteria, request);
  return page instanceof Response ? page : Response.json({ criteria: page.rows, next: page.next });
});

/** The first version of limits of the shop's own; the key is made of their title. */
export const POST = routeFor("criteria.write", async (now, request) => {
  const read = await readJson(request);
  return read instanceof Response ? read : saveByProgram(now, null, 0, read.json);
});
