import { pathRouteFor } from "@/app/_door/route-for";
import { issue, linesOf } from "@/lib/base";
import { getJob, listInspections } from "@/lib/jobs";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

/** One job with the inspections of it, newest first. */
export const GET = pathRouteFor<{ jobId: string }>("job.read", async ({ db }, _request, { jobId }) => {
  const job = await getJob(db, jobId);
  if (!job) return Response.json({ issues: linesOf([issue("job-gone")], recordSentence) }, { status: 404 });
  return Response.json({ ...job, inspections: await listInspections(db, { jobId }) });
});
