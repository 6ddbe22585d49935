import { ownOnly } from "@/app/_door/here";
import { listPage } from "@/app/_door/list-page";
import { routeFor } from "@/app/_door/route-for";
import { listCards, withOwnBeads } from "@/lib/series";

export const dynamic = "force-dynamic";

/** Cards, newest first, a page at a time, each with the beads run by it, as far as the asker sees those. */
export const GET = routeFor("bead.read", async (now, request) => {
  const page = listPage(await listCards(now.db), request);
  if (page instanceof Response) return page;
  return Response.json({
    cards: await withOwnBeads(now.db, page.rows, ownOnly(now.actor)),
    next: page.next,
  });
});
