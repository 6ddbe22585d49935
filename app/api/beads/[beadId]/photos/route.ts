import { revalidatePath } from "next/cache";
import { beadRouteFor } from "@/app/_door/route-for";
import { OwnIdSchema } from "../../shapes";
import { photoRoles, type PhotoRole } from "@/lib/assess";
import { linesOf } from "@/lib/base";
import { photoPlace } from "@/lib/db";
import { photoIssueStatus, photoSentence } from "@/lib/photo";
import { addPhoto, attachPhoto } from "@/lib/beads";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

/**
 * Takes the bytes of one photo as the body (not a form: it streams to disk as it comes) and puts it on the bead.
 * `?role=face|back|section`; `&id=` where the sender gave it one, so that
 * the same photo may come again after an answer was lost. Answers 201 with the photo, or the issues with their sentences.
 */
export const POST = beadRouteFor("bead.write", async (now, request, { beadId }) => {
  const ownId = OwnIdSchema.optional().safeParse(new URL(request.url).searchParams.get("id") ?? undefined);
  if (!ownId.success) return Response.json({ issues: [notAnId] }, { status: 400 });
  const declared = Number(request.headers.get("content-length"));
  const arriving = {
    dataDir: photoPlace(),
    sender: now.pen.by,
    source: request.body ?? emptyBody(),
    declaredBytes: Number.isFinite(declared) && declared > 0 ? declared : null,
  };
  const added = await attachPhoto(now.db, arriving, (photo) =>
    addPhoto(now.pen, beadId, photo, roleOf(request), ownId.data),
  );
  if (!added.ok && added.from === "photo") {
    const issues = linesOf(added.issues, photoSentence);
    return Response.json({ issues }, { status: photoIssueStatus(added.issues[0]?.code ?? "photo-damaged") });
  }
  if (!added.ok) {
    const issues = linesOf(added.issues, recordSentence);
    return Response.json({ issues }, { status: issues[0]?.code === "bead-gone" ? 404 : 409 });
  }
  revalidatePath("/");
  const { record, alsoOn } = added.value;
  return Response.json(
    {
      photo: record,
      alsoOn,
      notices: linesOf(added.photo.notices, photoSentence),
    },
    { status: 201 },
  );
});

const notAnId = { code: "not-understood", path: ["id"], message: "This is no id that a photo can have." };

function roleOf(request: Request): PhotoRole {
  const asked = new URL(request.url).searchParams.get("role");
  return photoRoles.find((role) => role === asked) ?? "face";
}

function emptyBody(): ReadableStream<Uint8Array> {
  return new ReadableStream({ start: (controller) => controller.close() });
}
