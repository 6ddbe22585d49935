import { pathRouteFor } from "@/app/_door/route-for";
import { issue, linesOf } from "@/lib/base";
import { getStudy } from "@/lib/jobs";
import { recordSentence } from "@/lib/store";
import { studyJson } from "../study-json";

export const dynamic = "force-dynamic";

/** One study with what came of it. */
export const GET = pathRouteFor<{ studyId: string }>("job.read", async ({ db }, _request, { studyId }) => {
  const study = await getStudy(db, studyId);
  if (study) return Response.json(studyJson(study));
  return Response.json({ issues: linesOf([issue("study-gone")], recordSentence) }, { status: 404 });
});
