import { revalidatePath } from "next/cache";
import { listPage } from "@/app/_door/list-page";
import { readJson } from "@/app/_door/read-json";
import { routeFor } from "@/app/_door/route-for";
import { statusOf } from "@/app/_door/save-refused";
import { linesOf } from "@/lib/base";
import { createJob, listJobs } from "@/lib/jobs";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

/** Jobs, newest first, a page at a time. */
export const GET = routeFor("job.read", async ({ db }, request) => {
  const page = listPage(await listJobs(db), request);
  return page instanceof Response ? page : Response.json({ jobs: page.rows, next: page.next });
});

/** Makes a job; what is left out stays empty. */
export const POST = routeFor("job.write", async ({ pen }, request) => {
  const read = await readJson(request);
  if (read instanceof Response) return read;
  const made = await createJob(pen, read.json);
  if (!made.ok)
    return Response.json({ issues: linesOf(made.issues, recordSentence) }, { status: statusOf(made.issues) });
  revalidatePath("/jobs");
  return Response.json(made.value, { status: 201, headers: { location: `/api/jobs/${made.value.id}` } });
});
