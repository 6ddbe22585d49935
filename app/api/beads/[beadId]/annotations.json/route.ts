import { beadRouteFor } from "@/app/_door/here";
import { beadAnnotations } from "@/lib/exchange";
import { getBead } from "@/lib/record";

export const dynamic = "force-dynamic";

/** The marks of a bead as a W3C Web Annotation collection with SVG selectors. */
export async function GET(
  request: Request,
  context: { params: Promise<{ beadId: string }> },
): Promise<Response> {
  const { beadId } = await context.params;
  const now = await beadRouteFor(request, "data.export", beadId);
  if (now instanceof Response) return now;
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
}
