import { z } from "zod";
import { listPage } from "@/app/_door/list-page";
import { readJson } from "@/app/_door/read-json";
import { pathRouteFor } from "@/app/_door/route-for";
import { saveNotUnderstood } from "@/app/_door/save-refused";
import { listShopSets } from "@/lib/shop";
import { saveByProgram } from "../shop-door";

export const dynamic = "force-dynamic";

const SaveSchema = z.object({ basedOn: z.number().int().min(1), content: z.unknown() });

/** Versions of one set of the shop's own limits, whole, newest first, a page at a time. */
export const GET = pathRouteFor<{ key: string }>("bead.read", async (now, request, { key }) => {
  const versions = await listShopSets(now.db, { key });
  if (versions.length === 0) {
    const message =
      "There are no limits of the shop's own under this key. /api/criteria lists what there is.";
    return Response.json({ issues: [{ code: "criteria-gone", path: ["key"], message }] }, { status: 404 });
  }
  const page = listPage(
    versions.toSorted((a, b) => b.version - a.version),
    request,
  );
  return page instanceof Response ? page : Response.json({ key, versions: page.rows, next: page.next });
});

/** `{ basedOn, content }`: the next version, if `basedOn` is still the newest; 409 when it is not. */
export const PUT = pathRouteFor<{ key: string }>("criteria.write", async (now, request, { key }) => {
  const read = await readJson(request);
  if (read instanceof Response) return read;
  const body = SaveSchema.safeParse(read.json);
  return body.success ? saveByProgram(now, key, body.data.basedOn, body.data.content) : saveNotUnderstood();
});
