import { revalidatePath } from "next/cache";
import type { z } from "zod";
import { thingOfBead, welderOf, type Here } from "@/app/_door/here";
import { routeFor } from "@/app/_door/route-for";
import { readJson } from "@/app/_door/read-json";
import { linesOf } from "@/lib/base";
import { createBead, getBead, workInBackground } from "@/lib/beads";
import { countBeads, wholePage, type PageAt } from "@/lib/find";
import { recordSentence, type RecordIssue } from "@/lib/store";
import { askedBeads } from "../export/_asked/asked-beads";
import { NewBeadSchema, PageSchema } from "./shapes";

export const dynamic = "force-dynamic";

/**
 * The beads that fit the filter, `limit` of them, with the verdict kept of each: from `offset` on, or, at the same cost
 * however far on, `after` what the page before called `next`. `stale`: the verdict is being worked out again and not said.
 */
export const GET = routeFor("bead.read", async (now, request) => {
  const asked = askedBeads(now, request, "bead.read");
  if (asked instanceof Response) return asked;
  const { filter, scope, params } = asked;
  const given = (name: string): string | undefined => params.get(name) ?? undefined;
  const page = PageSchema.safeParse({
    limit: given("limit"),
    offset: given("offset"),
    after: given("after"),
  });
  if (!page.success) return refused(page.error, 400);
  const { limit, offset, after } = page.data;
  const at: PageAt = after === undefined ? { skip: offset } : { after };
  const { beads, unreadable, next } = await wholePage(now.db, filter, scope, { at, size: limit });
  const { found } = await countBeads(now.db, filter, scope);
  const stale = beads.filter(({ said }) => said === null).map(({ bead }) => bead.number);
  if (stale.length > 0) workInBackground(now.db, stale);
  return Response.json({
    total: found,
    limit,
    offset,
    next,
    unreadable,
    beads: beads.map(({ bead, said, confirmedCause }) => ({
      ...bead,
      verdict: said?.verdict ?? null,
      stale: said === null,
      confirmedCause,
    })),
  });
});

/**
 * Makes a bead; what is left out stays empty. Photos come after it, one request each. With an `id` of the sender's own
 * the request may come again after its answer was lost: the bead that is there is the answer.
 */
export const POST = routeFor("bead.create", async (now, request) => {
  const read = await readJson(request);
  if (read instanceof Response) return read;
  const body = NewBeadSchema.safeParse(read.json);
  if (!body.success) return refused(body.error, 422);
  const { id, title, welder, setup, judgement } = body.data;
  const made = await createBead(now.pen, {
    ...(id === undefined ? {} : { id }),
    ...(title === undefined ? {} : { title }),
    ...(setup === undefined ? {} : { setup }),
    ...(judgement === undefined ? {} : { judgement }),
    welder: welder ?? null,
    welderId: welderOf(now.actor),
  });
  if (!made.ok && made.issues[0]?.code === "bead-there-already") return thereAlready(now, id ?? "", made);
  if (!made.ok) {
    const issues = linesOf(made.issues, recordSentence);
    return Response.json({ issues }, { status: 503 });
  }
  revalidatePath("/");
  return Response.json(made.value, { status: 201, headers: { location: `/api/beads/${made.value.id}` } });
});

/** Whoever may write it is told what is there; anybody else, that the id is taken. */
async function thereAlready(
  now: Here,
  id: string,
  { issues }: { readonly issues: readonly RecordIssue[] },
): Promise<Response> {
  const bead = now.may("bead.write", await thingOfBead(id)) ? await getBead(now.db, id) : null;
  if (bead) return Response.json(bead, { status: 201 });
  return Response.json({ issues: linesOf(issues, recordSentence) }, { status: 409 });
}

function refused(error: z.ZodError, status: number): Response {
  const issues = error.issues.map((one) => ({
    code: "not-understood",
    path: one.path,
    message: `${one.path.join(".") || "(top)"}: ${one.message}`,
  }));
  return Response.json({ issues }, { status });
}
