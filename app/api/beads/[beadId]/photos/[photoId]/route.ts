import { revalidatePath } from "next/cache";
import { beadRouteFor } from "@/app/_door/route-for";
import { linesOf } from "@/lib/base";
import { removePhoto } from "@/lib/beads";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

/** Takes one photo and its marks off the bead; the original stays in the store. */
export const DELETE = beadRouteFor<{ beadId: string; photoId: string }>(
  "bead.write",
  async (now, _request, { beadId, photoId }) => {
    const removed = await removePhoto(now.pen, beadId, photoId);
    revalidatePath("/");
    if (removed.ok) return new Response(null, { status: 204 });
    const issues = linesOf(removed.issues, recordSentence);
    return Response.json({ issues }, { status: issues[0]?.code === "photo-gone" ? 404 : 503 });
  },
);
