import { routeFor } from "@/app/_door/route-for";
import { newestEntries } from "@/lib/store";
import { LogPageSchema } from "./shapes";

export const dynamic = "force-dynamic";

/** Entries of the log from newest to oldest; `before` goes on from the last number of the page before. */
export const GET = routeFor("log.read", async ({ db }, request) => {
  const asked = LogPageSchema.safeParse(Object.fromEntries(new URL(request.url).searchParams));
  if (!asked.success)
    return Response.json(
      { issues: asked.error.issues.map(({ path, message }) => ({ code: "not-understood", path, message })) },
      { status: 400 },
    );
  const { limit, before } = asked.data;
  const entries = await newestEntries(db, limit, before ?? null);
  return Response.json({ entries, next: entries.length < limit ? null : (entries.at(-1)?.seq ?? null) });
});
