import { noPicture, pictureAnswer } from "@/app/_door/picture-answer";
import { refuseForeign } from "@/app/_door/same-site";
import { here } from "@/app/_door/here";
import { getBead } from "@/lib/beads";
import { getFeedback, handInBySecret } from "@/lib/classroom";

export const dynamic = "force-dynamic";

/** A picture of this hand-in's own bead for whoever holds its secret; any other picture is not here. */
export async function GET(
  request: Request,
  context: { params: Promise<{ code: string; secret: string; sha256: string; size: string }> },
): Promise<Response> {
  const foreign = refuseForeign(request);
  if (foreign) return foreign;
  const { code, secret, sha256, size } = await context.params;
  const { db } = await here();
  const handIn = await handInBySecret(db, code, secret);
  if (!handIn) return noPicture();
  const [bead, feedback] = await Promise.all([getBead(db, handIn.beadId), getFeedback(db, handIn.id)]);
  // A photo taken off the bead after the answer still belongs to the answer.
  const own = [...(bead?.photos ?? []), ...(feedback.returned?.photos ?? [])];
  if (!own.some((photo) => photo.sha256 === sha256)) return noPicture();
  return pictureAnswer(request, sha256, size, {
    "cache-control": "private, max-age=86400",
    "referrer-policy": "no-referrer",
  });
}
