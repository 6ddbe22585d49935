import type { CauseId } from "./cause-ids";

/** The published weights count as much as this many confirmed cases of this shop. Own estimate. */
export const PUBLISHED_WORTH = 20;

/** No cause becomes more plausible than this before a bead has been looked at; three share a variable at most. */
export const MOST = 0.3;

/**
 * Dirichlet updating of the shares of the causes: the published plausibilities, scaled to PUBLISHED_WORTH cases, plus
 * the confirmed cases. Only the shares move; how many faults a bead has to expect stays as published. Empty counts give
 * the published values back exactly, so clearing the counts is the reset.
 */
export function shiftedPriors(
  published: ReadonlyMap<CauseId, number>,
  counts: Partial<Readonly<Record<CauseId, number>>>,
): ReadonlyMap<CauseId, number> {
  const confirmed = confirmedTotal(published.keys(), counts);
  if (confirmed === 0) return published;
  const sum = [...published.values()].reduce((a, b) => a + b, 0);
  return new Map(
    [...published].map(([id, p]) => {
      const share = (PUBLISHED_WORTH * (p / sum) + (counts[id] ?? 0)) / (PUBLISHED_WORTH + confirmed);
      return [id, Math.min(share * sum, MOST)] as const;
    }),
  );
}

/** Confirmed cases among the given causes. */
export function confirmedTotal(
  ids: Iterable<CauseId>,
  counts: Partial<Readonly<Record<CauseId, number>>>,
): number {
  let total = 0;
  for (const id of ids) total += counts[id] ?? 0;
  return total;
}
