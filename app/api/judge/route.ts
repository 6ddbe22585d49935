import { machineDoor } from "@/app/_door/machine-door";
import { shopSetAsked } from "@/lib/case";
import { getShopSet } from "@/lib/shop";

export const dynamic = "force-dynamic";

/** A case that names limits of the shop's own without carrying them is judged by those of this installation. */
export const { GET, POST } = machineDoor("judge", async (json, { db }) => {
  const asked = shopSetAsked(json);
  return { shop: asked === null ? null : ((await getShopSet(db, asked))?.content ?? null) };
});
