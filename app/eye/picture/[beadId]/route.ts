import { pathRouteFor } from "@/app/_door/route-for";
import { dataDir } from "@/lib/db";
import { drawnPicture } from "@/lib/drill";

export const dynamic = "force-dynamic";

/** The picture of a drawn bead. Nothing of what is on it is in it: no title, no metadata of the scene. */
export const GET = pathRouteFor<{ beadId: string }>("bead.read", async (_, __, { beadId }) => {
  const bytes = await drawnPicture(dataDir(), beadId);
  if (!bytes) return new Response("No such picture.", { status: 404 });
  return new Response(new Uint8Array(bytes), {
    headers: { "content-type": "image/jpeg", "cache-control": "private, max-age=86400" },
  });
});
