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

/** The same from cases that were counted by cause already; a cause this program does not know weighs nothing. */
export function knownCounts(
  counted: Iterable<{ readonly cause: string; readonly cases: number }>,
): ShopCounts {
  const counts: ShopCounts = {};
  for (const { cause, cases } of counted) {
    const known = causeIds.find((id) => id === cause);
    if (known) counts[known] = (counts[known] ?? 0) + cases;
  }
  return counts;
}
