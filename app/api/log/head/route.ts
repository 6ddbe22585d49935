import { routeFor } from "@/app/_door/route-for";
import { signedHead } from "@/lib/keys";

export const dynamic = "force-dynamic";

/** The log's newest entry, signed by this installation, to be kept elsewhere and given back to a later verify. */
export const GET = routeFor("log.read", async ({ pen }) => {
  const head = await signedHead(pen, new Date());
  if (!head)
    return Response.json(
      { issues: [{ code: "log-empty", message: "The log holds nothing yet." }] },
      { status: 404 },
    );
  return new Response(`${JSON.stringify(head, null, 2)}\n`, {
    headers: {
      "content-type": "application/json",
      "content-disposition": `attachment; filename="toeline-head-${head.head.seq}.json"`,
      "cache-control": "private, no-store",
    },
  });
});
