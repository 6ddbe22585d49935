import { beadRouteFor } from "@/app/_door/route-for";
import { beadAnnotations } from "@/lib/exchange";
import { getBead } from "@/lib/beads";

export const dynamic = "force-dynamic";

/** The marks of a bead as a W3C Web Annotation collection with SVG selectors. */
export const GET = beadRouteFor("data.export", async (now, _request, { beadId }) => {
  const bead = await getBead(now.db, beadId);
  if (!bead) return Response.json({ issues: [{ code: "bead-gone" }] }, { status: 404 });
  // Named by the record, not by the host it was fetched from: the same marks give the same file.
  const collection = beadAnnotations(bead, `urn:toeline:bead:${bead.id}:r${bead.revision}`);
  return new Response(JSON.stringify(collection), {
    headers: {
      // Web Annotation Protocol, 3: the media type with its profile.
      "content-type": 'application/ld+json; profile="http://www.w3.org/ns/anno.jsonld"',
      "content-disposition": `attachment; filename="toeline-bead-${bead.number}-marks.json"`,
      "cache-control": "private, no-store",
    },
  });
});
