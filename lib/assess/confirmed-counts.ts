import { causeIds, type ShopCounts } from "@/lib/diagnose";
import type { BeadJudgement } from "./bead";

/** Cases this shop confirmed: beads whose one change cured the one before, counted by cause. */
export function confirmedCounts(judgements: Iterable<Pick<BeadJudgement, "tried" | "outcome">>): ShopCounts {
  const counts: ShopCounts = {};
  for (const { tried, outcome } of judgements) {
    const cause = causeIds.find((id) => id === tried?.causeId);
    if (outcome === "cured" && cause) counts[cause] = (counts[cause] ?? 0) + 1;
  }
  return counts;
}
