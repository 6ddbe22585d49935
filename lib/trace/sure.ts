import type { Trace, TraceStation } from "./types";

/** How sure both toes are at one place, 0 to 1. */
export const sureOf = ({ upper, lower }: TraceStation): number => Math.min(upper.sure, lower.sure);

/** Median over the stations. */
export function usuallySure({ stations }: Pick<Trace, "stations">): number {
  const sures = stations.map(sureOf).sort((a, b) => a - b);
  return sures[sures.length >> 1] ?? 0;
}
