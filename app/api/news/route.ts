import { routeFor } from "@/app/_door/route-for";
import { newsBetween } from "@/lib/classroom";
import { personIdOf, reach } from "@/lib/people";
import { NewsAskedSchema } from "./shapes";

export const dynamic = "force-dynamic";

/**
 * What came since a moment for whoever asks: hand-ins for those who answer, returned feedback for a student. Without `since`
 * nothing but `until`, which is the `since` of the next time.
 */
export const GET = routeFor("feedback.read", async ({ db, actor }, request) => {
  const asked = NewsAskedSchema.safeParse(Object.fromEntries(new URL(request.url).searchParams));
  if (!asked.success)
    return Response.json(
      { issues: asked.error.issues.map(({ path, message }) => ({ code: "not-understood", path, message })) },
      { status: 400 },
    );
  const until = new Date();
  const personId = personIdOf(actor);
  const all = reach(actor, "feedback.read") === "all";
  const of = all ? "all" : personId === null ? null : { personId };
  const { since } = asked.data;
  const news = since && of ? await newsBetween(db, of, { after: new Date(since), until }) : [];
  return Response.json({ news, until: until.toISOString() });
});
