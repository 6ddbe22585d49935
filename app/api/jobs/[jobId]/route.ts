import { revalidatePath } from "next/cache";
import { z } from "zod";
import { pathRouteFor } from "@/app/_door/route-for";
import { pageAsked, pageGone } from "@/app/_door/list-page";
import { readJson } from "@/app/_door/read-json";
import { saveNotUnderstood, statusOf } from "@/app/_door/save-refused";
import { issue, linesOf } from "@/lib/base";
import { getJob, inspectionPage, saveJob } from "@/lib/jobs";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

const SaveSchema = z.object({ basedOn: z.number().int().min(1), content: z.unknown() });

/** One job with the inspections of it, newest first, a page of them at a time. */
export const GET = pathRouteFor<{ jobId: string }>("job.read", async ({ db }, request, { jobId }) => {
  const asked = pageAsked(request);
  if (asked instanceof Response) return asked;
  const job = await getJob(db, jobId);
  if (!job) return Response.json({ issues: linesOf([issue("job-gone")], recordSentence) }, { status: 404 });
  const page = await inspectionPage(db, jobId, asked);
  return page ? Response.json({ ...job, ...page }) : pageGone();
});

/**
 * `{ basedOn, content }`: saves the whole job if it is still at revision `basedOn`; 409 when it is not, and where a weld
 * that carries beads would be struck off.
 */
export const PUT = pathRouteFor<{ jobId: string }>("job.write", async ({ pen }, request, { jobId }) => {
  const read = await readJson(request);
  if (read instanceof Response) return read;
  const body = SaveSchema.safeParse(read.json);
  if (!body.success) return saveNotUnderstood();
  const saved = await saveJob(pen, jobId, body.data.basedOn, body.data.content);
  if (!saved.ok)
    return Response.json(
      { issues: linesOf(saved.issues, recordSentence) },
      { status: statusOf(saved.issues) },
    );
  revalidatePath("/jobs", "layout");
  return Response.json(saved.value);
});
