import { ownOnly } from "@/app/_door/here";
import { pathRouteFor } from "@/app/_door/route-for";
import { issue, linesOf } from "@/lib/base";
import { getCard, withOwnBeads } from "@/lib/series";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

/** One card with the beads run by it, as far as the asker sees those. */
export const GET = pathRouteFor<{ cardId: string }>("bead.read", async ({ db, actor }, _, { cardId }) => {
  const card = await getCard(db, cardId);
  if (!card) return Response.json({ issues: linesOf([issue("card-gone")], recordSentence) }, { status: 404 });
  const [seen] = await withOwnBeads(db, [card], ownOnly(actor));
  return Response.json(seen);
});
