import { routeFor } from "@/app/_door/route-for";
import { listExercises } from "@/lib/classroom";

export const dynamic = "force-dynamic";

/** Every exercise, newest first, with its group and how many beads were handed in. */
export const GET = routeFor("course.read", async ({ db }) =>
  Response.json({ exercises: await listExercises(db) }),
);
