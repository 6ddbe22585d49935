import { readShopSetId } from "@/lib/accept";
import { defaultAssessContext, type AssessContext } from "@/lib/assess";
import { canonicalJson } from "@/lib/base";
import type { Db, Tx } from "@/lib/db";
import { sha256Text } from "@/lib/store";
import { getShopSet, listShopSets } from "./criteria";
import { shopCounts } from "./shop-counts";

export interface ShopContext extends AssessContext {
  /** Stands for the shop's confirmed cases as they are now: what causes were weighed by is kept beside them. */
  readonly weighedBy: string;
}

/**
 * What this installation knows beyond one bead: its confirmed cases and every version of its own limits, so that
 * whatever a bead was given is found; with `only`, no more than those versions. The one place where the server puts an
 * assessment's context together.
 */
export async function assessContext(db: Db | Tx, only?: readonly (string | null)[]): Promise<ShopContext> {
  const [counts, sets] = await Promise.all([shopCounts(db), only ? setsNamed(db, only) : listShopSets(db)]);
  return {
    ...defaultAssessContext,
    shopCounts: counts,
    shopSets: sets.map(({ content }) => content),
    weighedBy: weighedByCounts(counts),
  };
}

/** Stands for confirmed cases: equal counts, equal texts. */
export function weighedByCounts(counts: AssessContext["shopCounts"]): string {
  return sha256Text(canonicalJson(counts)).slice(0, 16);
}

async function setsNamed(db: Db | Tx, ids: readonly (string | null)[]) {
  const own = [...new Set(ids)].filter((id) => id !== null && readShopSetId(id) !== null);
  const sets = await Promise.all(own.map((id) => getShopSet(db, id ?? "")));
  return sets.filter((set) => set !== null);
}
