import { pathRouteFor } from "@/app/_door/route-for";
import { listShopSets } from "@/lib/shop";

export const dynamic = "force-dynamic";

/** Every version of one set of the shop's own limits, whole, newest first. */
export const GET = pathRouteFor<{ key: string }>("bead.read", async (now, _request, { key }) => {
  const versions = await listShopSets(now.db, { key });
  if (versions.length === 0) {
    const message =
      "There are no limits of the shop's own under this key. /api/criteria lists what there is.";
    return Response.json({ issues: [{ code: "criteria-gone", path: ["key"], message }] }, { status: 404 });
  }
  return Response.json({ key, versions: versions.toSorted((a, b) => b.version - a.version) });
});
