import { defaultAssessContext, type AssessContext } from "@/lib/assess";
import type { Db } from "@/lib/db";
import { listShopSets } from "./criteria";
import { shopCounts } from "./shop-counts";

/**
 * What this installation knows beyond one bead: its confirmed cases and every version of its own limits, so that
 * whatever a bead was given is found. The one place where the server puts an assessment's context together.
 */
export async function assessContext(db: Db): Promise<AssessContext> {
  const [counts, sets] = await Promise.all([shopCounts(db), listShopSets(db)]);
  return { ...defaultAssessContext, shopCounts: counts, shopSets: sets.map(({ content }) => content) };
}
