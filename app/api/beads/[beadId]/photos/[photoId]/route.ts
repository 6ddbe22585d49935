import { revalidatePath } from "next/cache";
import { beadRouteFor } from "@/app/_door/here";
import { linesOf } from "@/lib/base";
import { recordSentence, removePhoto } from "@/lib/record";

export const dynamic = "force-dynamic";

/** Takes one photo and its marks off the bead; the original stays in the store. */
export async function DELETE(
  request: Request,
  context: { params: Promise<{ beadId: string; photoId: string }> },
): Promise<Response> {
  const { beadId, photoId } = await context.params;
  const now = await beadRouteFor(request, "bead.write", beadId);
  if (now instanceof Response) return now;
  const removed = await removePhoto(now.pen, beadId, photoId);
  revalidatePath("/");
  if (removed.ok) return new Response(null, { status: 204 });
  const issues = linesOf(removed.issues, recordSentence);
  return Response.json({ issues }, { status: issues[0]?.code === "photo-gone" ? 404 : 503 });
}
