import { routeFor } from "@/app/_door/route-for";
import { newsBetween } from "@/lib/classroom";
import { holds, reach, type Actor } from "@/lib/people";
import { NewsAskedSchema } from "./shapes";

export const dynamic = "force-dynamic";

/** Whose news an actor is told: of each of their roles. */
function newsOf(actor: Actor): readonly ("all" | { readonly personId: string })[] {
  const all = reach(actor, "feedback.read") === "all" ? (["all"] as const) : [];
  return actor.kind === "person" && holds(actor, "welder") ? [...all, { personId: actor.personId }] : all;
}

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
  const { since } = asked.data;
  const news = since
    ? await Promise.all(newsOf(actor).map((of) => newsBetween(db, of, { after: new Date(since), until })))
    : [];
  const inTurn = news.flat().toSorted((a, b) => (a.at < b.at ? -1 : 1));
  return Response.json({ news: inTurn, until: until.toISOString() });
});
