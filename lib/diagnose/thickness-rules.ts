import type { Odds } from "./reading";

/**
 * What a thickness says by itself, where the class of the electrode has no floor or cap that it breaks (that is a judged
 * fact of the set-up): sheet up to 2 mm melts through easily, plate from 12 mm chills. Memory.
 */
export function thicknessOdds(thicknessMm: number): Odds {
  // Thin sheet is a circumstance; what can be wrong about it is that the heat was set for more.
  if (thicknessMm <= 2) return { "thin-base": 3, "wfs-high": 1.5, "base-cold-thick": 0.05 };
  if (thicknessMm >= 12) return { "thin-base": 0.05, "base-cold-thick": 3 };
  return { "thin-base": thicknessMm > 4 ? 0.2 : 1, "base-cold-thick": thicknessMm < 6 ? 0.3 : 1 };
}
