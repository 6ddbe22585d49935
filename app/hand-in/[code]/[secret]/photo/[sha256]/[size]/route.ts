import { readFile } from "node:fs/promises";
import { refuseForeign } from "@/app/_door/same-site";
import { here } from "@/app/_door/here";
import { dataDir } from "@/lib/db";
import { photoSizes, viewPath, viewType, type PhotoSize } from "@/lib/photo";
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
  const file =
    handIn && Object.hasOwn(photoSizes, size) ? viewPath(dataDir(), sha256, size as PhotoSize) : null;
  if (!handIn || file === null) return missing();
  const [bead, feedback] = await Promise.all([getBead(db, handIn.beadId), getFeedback(db, handIn.id)]);
  // A photo taken off the bead after the answer still belongs to the answer.
  const own = [...(bead?.photos ?? []), ...(feedback.returned?.photos ?? [])];
  if (!own.some((photo) => photo.sha256 === sha256)) return missing();
  const bytes = await readFile(file).catch(() => null);
  if (bytes === null) return missing();
  return new Response(new Uint8Array(bytes), {
    headers: {
      "content-type": viewType(size as PhotoSize),
      "cache-control": "private, max-age=86400",
      "x-content-type-options": "nosniff",
      "referrer-policy": "no-referrer",
    },
  });
}

const missing = () => new Response("No such picture.", { status: 404 });
