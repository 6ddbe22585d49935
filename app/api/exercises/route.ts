import { listPage } from "@/app/_door/list-page";
import { routeFor } from "@/app/_door/route-for";
import { listExercises } from "@/lib/classroom";

export const dynamic = "force-dynamic";

/** Exercises, newest first, a page at a time, each with its group and how many beads were handed in. */
export const GET = routeFor("course.read", async ({ db }, request) => {
  const page = listPage(await listExercises(db), request);
  return page instanceof Response ? page : Response.json({ exercises: page.rows, next: page.next });
});
