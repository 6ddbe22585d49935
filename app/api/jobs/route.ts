import { revalidatePath } from "next/cache";
import { readJson } from "@/app/_door/read-json";
import { routeFor } from "@/app/_door/route-for";
import { linesOf } from "@/lib/base";
import { createJob, listJobs } from "@/lib/jobs";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

/** Every job, newest first. */
export const GET = routeFor("job.read", async ({ db }) => Response.json({ jobs: await listJobs(db) }));

/** Makes a job; what is left out stays empty. */
export const POST = routeFor("job.write", async ({ pen }, request) => {
  const read = await readJson(request);
  if (read instanceof Response) return read;
  const made = await createJob(pen, read.json);
  if (!made.ok) {
    const status = made.issues.some(({ code }) => code === "job-not-understood") ? 422 : 503;
    return Response.json({ issues: linesOf(made.issues, recordSentence) }, { status });
  }
  revalidatePath("/jobs");
  return Response.json(made.value, { status: 201, headers: { location: `/api/jobs/${made.value.id}` } });
});
