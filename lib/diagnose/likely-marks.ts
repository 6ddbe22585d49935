import { comesOf, imperfectionIds, type ImperfectionId, type Process } from "@/lib/trade";
import { linksFor } from "./model";
import type { RankedCause } from "./types";
import { JUDGED_SHARE, LEAK, linkStrength } from "./weights";

/**
 * Imperfections by how likely these causes, as they stand, leave them in this process, the likeliest first: by the noisy
 * OR of the link tables with each cause at its present probability, as if causes were independent. A ranking, nothing more.
 * What no cause leaves is not in it, nor what this process cannot leave; while the process is not known, only what any may.
 */
export function likelyMarks(
  causes: readonly Pick<RankedCause, "id" | "probability">[],
  process: Process | null,
): readonly ImperfectionId[] {
  const at = new Map(causes.map(({ id, probability }) => [id, probability]));
  const scored = imperfectionIds.flatMap((id) => {
    const links = linksFor(id, process).filter(({ cause }) => at.has(cause));
    if (links.length === 0 || !comesOf(id, process)) return [];
    const none = links.reduce(
      (silent, { cause, weight, judged }) =>
        silent * (1 - (at.get(cause) ?? 0) * linkStrength[weight] * (judged ? JUDGED_SHARE : 1)),
      1 - LEAK,
    );
    return [{ id, chance: 1 - none }];
  });
  return scored.toSorted((a, b) => b.chance - a.chance).map(({ id }) => id);
}
