import { areaFromLegMm2, legFromAreaMm } from "./fillet";
import type { Wire } from "./amps-for-feed";
import { depositAreaMm2, depositOf, travelForAreaMmPerS } from "./deposition";
import { ranged, type Ranged } from "./ranged";
import { filletFace } from "./tables/fillet-face";

/**
 * Leg of a fillet laid in one pass by conservation of metal: the leg from feed and travel, the travel from feed and leg.
 * The face of a real fillet holds up to a fifth more metal than a flat one; the middle of that is taken, and its spread
 * counts in the error. Fit-up gap, unequal legs and spatter beyond the usual are not in it.
 */
export interface FilletRun {
  readonly wire: Wire;
  readonly feedMPerMin: number;
  readonly travelMmPerMin: number;
}

/** Deposited cross-section of one pass, mm². null unless feed and travel are positive. */
export function passAreaMm2({ wire, feedMPerMin, travelMmPerMin }: FilletRun): Ranged | null {
  if (!(travelMmPerMin > 0) || !(feedMPerMin > 0)) return null;
  const deposit = depositOf(wire, feedMPerMin);
  return ranged(depositAreaMm2(deposit, travelMmPerMin / 60), deposit.areaRelativeError);
}

/** Travel, mm/min, that leaves a cross-section (mm²) at a feed (m/min). null unless both are positive. */
export function travelForArea(wire: Wire, feedMPerMin: number, areaMm2: number): Ranged | null {
  if (!(areaMm2 > 0) || !(feedMPerMin > 0)) return null;
  const deposit = depositOf(wire, feedMPerMin);
  return ranged(travelForAreaMmPerS(deposit, areaMm2) * 60, deposit.areaRelativeError);
}

/** Cross-section of a usual fillet of this leg (mm), its face counted, mm². */
export function filletAreaMm2(legMm: number): Ranged {
  return ranged(areaFromLegMm2(legMm) * filletFace.areaOverFlat, filletFace.relativeError);
}

/** Leg of an equal-leg fillet, mm. null unless feed and travel are positive. */
export function legForRun(run: FilletRun): Ranged | null {
  const area = passAreaMm2(run);
  if (area === null) return null;
  return ranged(
    legFromAreaMm(area.value / filletFace.areaOverFlat),
    Math.hypot(area.relativeError, filletFace.relativeError) / 2,
  );
}

/** Travel, mm/min, that leaves a leg (mm) at a feed (m/min). null unless both are positive. */
export function travelForLeg(wire: Wire, feedMPerMin: number, legMm: number): Ranged | null {
  if (!(legMm > 0) || !(feedMPerMin > 0)) return null;
  const deposit = depositOf(wire, feedMPerMin);
  return ranged(
    travelForAreaMmPerS(deposit, areaFromLegMm2(legMm) * filletFace.areaOverFlat) * 60,
    Math.hypot(deposit.areaRelativeError, filletFace.relativeError),
  );
}
