import type { Source } from "@/lib/base";
import { type ElectrodeClass, fromMemory, type Position, thicknessLimits } from "@/lib/trade";
import type { Odds } from "./reading";

/** Readings this close to a limit are not over it: sheet is sold to about this tolerance. */
const ROUNDING = 0.03;

/**
 * How a thickness stands to the electrode, as factors on the odds: by the floor and cap of its class where there is one
 * (lib/trade), otherwise by the plain fact that sheet up to 2 mm melts through easily and plate from 12 mm chills.
 */
export function thicknessRules(
  thicknessMm: number,
  electrode: ElectrodeClass | null,
  diameterMm: number | null,
  position: Position | null,
): { readonly odds: Odds; readonly source: Source } {
  const limits = electrode === null ? [] : thicknessLimits(electrode, diameterMm, position);
  for (const { kind, mm, source } of limits) {
    if (kind === "floor" && thicknessMm < mm * (1 - ROUNDING))
      return { odds: { "thin-base": 15, "base-cold-thick": 0.05 }, source };
    if (kind === "cap" && thicknessMm > mm * (1 + ROUNDING))
      return { odds: { "base-cold-thick": 8, "thin-base": 0.05 }, source };
  }
  // Thin sheet is a circumstance; what can be wrong about it is that the heat was set for more.
  if (thicknessMm <= 2)
    return { odds: { "thin-base": 3, "wfs-high": 1.5, "base-cold-thick": 0.05 }, source: fromMemory };
  if (thicknessMm >= 12) return { odds: { "thin-base": 0.05, "base-cold-thick": 3 }, source: fromMemory };
  return {
    odds: { "thin-base": thicknessMm > 4 ? 0.2 : 1, "base-cold-thick": thicknessMm < 6 ? 0.3 : 1 },
    source: fromMemory,
  };
}
