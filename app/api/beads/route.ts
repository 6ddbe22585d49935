import { revalidatePath } from "next/cache";
import type { z } from "zod";
import { welderOf } from "@/app/_door/here";
import { routeFor } from "@/app/_door/route-for";
import { linesOf } from "@/lib/base";
import { createBead } from "@/lib/beads";
import { recordSentence } from "@/lib/store";
import { askedBeads } from "../export/_asked/asked-beads";
import { NewBeadSchema, PageSchema } from "./shapes";

export const dynamic = "force-dynamic";

/** The beads that fit the filter, `limit` of them from `offset` on, with the verdict worked out for each. */
export const GET = routeFor("bead.read", async (now, request) => {
  const asked = await askedBeads(now, request, "bead.read");
  if (asked instanceof Response) return asked;
  const page = PageSchema.safeParse({
    limit: asked.params.get("limit") ?? undefined,
    offset: asked.params.get("offset") ?? undefined,
  });
  if (!page.success) return refused(page.error, 400);
  const { limit, offset } = page.data;
  const beads = asked.found
    .slice(offset, offset + limit)
    .map(({ bead, verdict, confirmedCause }) => ({ ...bead, verdict, confirmedCause }));
  return Response.json({ total: asked.found.length, limit, offset, beads });
});

/** Makes a bead; what is left out stays empty. Photos come after it, one request each. */
export const POST = routeFor("bead.create", async (now, request) => {
  const body = NewBeadSchema.safeParse(await request.json().catch(() => null));
  if (!body.success) return refused(body.error, 422);
  const { title, welder, setup, judgement } = body.data;
  const made = await createBead(now.pen, {
    ...(title === undefined ? {} : { title }),
    ...(setup === undefined ? {} : { setup }),
    ...(judgement === undefined ? {} : { judgement }),
    welder: welder ?? null,
    welderId: welderOf(now.actor),
  });
  if (!made.ok) {
    const issues = linesOf(made.issues, recordSentence);
    return Response.json({ issues }, { status: 503 });
  }
  revalidatePath("/");
  return Response.json(made.value, { status: 201, headers: { location: `/api/beads/${made.value.id}` } });
});

function refused(error: z.ZodError, status: number): Response {
  const issues = error.issues.map((one) => ({
    code: "not-understood",
    path: one.path,
    message: `${one.path.join(".") || "(top)"}: ${one.message}`,
  }));
  return Response.json({ issues }, { status });
}
