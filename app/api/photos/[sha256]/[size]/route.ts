import { noPicture, pictureAnswer } from "@/app/_door/picture-answer";
import { pathRouteFor } from "@/app/_door/route-for";
import { reach } from "@/lib/people";
import { photoThings } from "@/lib/beads";

export const dynamic = "force-dynamic";

/** A derived picture: upright, without metadata. The original's bytes are kept as evidence and not served here. */
export const GET = pathRouteFor<{ sha256: string; size: string }>(
  "bead.read",
  async (now, request, { sha256, size }) => {
    const allowed =
      reach(now.actor, "bead.read") === "all" ||
      (await photoThings(now.db, sha256)).some((thing) => now.may("bead.read", thing));
    // Not "forbidden": a refusal must not tell that the picture exists.
    if (!allowed) return noPicture();
    // The address contains the content's hash, so it never changes. A day and no longer: what is taken out of the store, or no
    // longer somebody's to see, shall not lie in browsers for good.
    return pictureAnswer(request, sha256, size, { "cache-control": "private, max-age=86400, immutable" });
  },
);
