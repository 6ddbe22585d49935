import { routeFor } from "@/app/_door/route-for";
import { studyFigures } from "@/lib/gauge";
import { listStudies } from "@/lib/jobs";

export const dynamic = "force-dynamic";

/** Every study of a gauge with what came of it, the newest day first. */
export const GET = routeFor("job.read", async (now) => {
  const studies = (await listStudies(now.db)).map(({ study, ...rest }) => {
    const { lines, components, categories, reading } = studyFigures(study);
    const { pooled, gaugeDegrees } = components;
    return { ...rest, study, figures: { lines, pooled, gaugeDegrees, categories, reading } };
  });
  return Response.json({ studies });
});
