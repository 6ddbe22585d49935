import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { Readable } from "node:stream";
import { pathRouteFor } from "@/app/_door/route-for";
import { reach } from "@/lib/people";
import { photoThings } from "@/lib/beads";
import { dataDir } from "@/lib/db";
import { photoSizes, viewPath, viewType, type PhotoSize } from "@/lib/photo";

export const dynamic = "force-dynamic";

/** A derived picture: upright, without metadata. The original's bytes are kept as evidence and not served here. */
export const GET = pathRouteFor<{ sha256: string; size: string }>(
  "bead.read",
  async (now, _request, { sha256, size }) => {
    const allowed =
      reach(now.actor, "bead.read") === "all" ||
      (await photoThings(now.db, sha256)).some((thing) => now.may("bead.read", thing));
    // Not "forbidden": a refusal must not tell that the picture exists.
    if (!allowed) return new Response("No such picture.", { status: 404 });
    const file = isPhotoSize(size) ? viewPath(dataDir(), sha256, size) : null;
    const facts = file === null ? null : await stat(file).catch(() => null);
    if (file === null || facts === null) return new Response("No such picture.", { status: 404 });
    return new Response(Readable.toWeb(createReadStream(file)) as ReadableStream<Uint8Array>, {
      headers: {
        "content-type": viewType(size as PhotoSize),
        "content-length": String(facts.size),
        // The address contains the content's hash, so it never changes.
        "cache-control": "private, max-age=31536000, immutable",
        "x-content-type-options": "nosniff",
      },
    });
  },
);

function isPhotoSize(size: string): size is PhotoSize {
  return Object.hasOwn(photoSizes, size);
}
