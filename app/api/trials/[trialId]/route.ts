import { thingRouteFor } from "@/app/_door/route-for";
import { thingOfTrial } from "@/app/_door/series";
import { issue, linesOf } from "@/lib/base";
import { db } from "@/lib/db";
import { getTrial } from "@/lib/series";
import { recordSentence } from "@/lib/store";

export const dynamic = "force-dynamic";

/** One trial; of their own, for whoever sees only that. */
export const GET = thingRouteFor<{ trialId: string }>(
  "bead.read",
  ({ trialId }) => thingOfTrial(db(), trialId),
  async (now, _request, { trialId }) => {
    const trial = await getTrial(now.db, trialId);
    if (trial) return Response.json(trial);
    return Response.json({ issues: linesOf([issue("trial-gone")], recordSentence) }, { status: 404 });
  },
);
