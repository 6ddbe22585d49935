import { revalidatePath } from "next/cache";
import { refuseForeign } from "@/app/_door/same-site";
import { db } from "@/lib/db";
import { recordSentence, removePhoto } from "@/lib/record";

export const dynamic = "force-dynamic";

/** Takes one photo and its marks off the bead; the original stays in the store. */
export async function DELETE(
  request: Request,
  context: { params: Promise<{ beadId: string; photoId: string }> },
): Promise<Response> {
  const refused = refuseForeign(request);
  if (refused) return refused;
  const { beadId, photoId } = await context.params;
  const removed = await removePhoto(db(), beadId, photoId);
  revalidatePath("/");
  if (removed.ok) return new Response(null, { status: 204 });
  const issues = removed.issues.map((one) => ({ code: one.code, message: recordSentence(one) }));
  return Response.json({ issues }, { status: issues[0]?.code === "photo-gone" ? 404 : 503 });
}
