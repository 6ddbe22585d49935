import { areaFromLegMm2, legFromAreaMm } from "./fillet";
import type { Wire } from "./amps-for-feed";
import { depositAreaMm2, depositOf, travelForAreaMmPerS } from "./deposition";
import { ranged, type Ranged } from "./ranged";
import { filletFace } from "./tables/fillet-face";

/**
 * Leg of a fillet laid in one pass, feed, travel and leg by conservation of metal: any of the three from the other two.
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

/** Feed, m/min, that leaves a leg (mm) at a travel (mm/min). null unless both are positive. */
export function feedForLeg(wire: Wire, travelMmPerMin: number, legMm: number): Ranged | null {
  const perFeed = travelForLeg(wire, 1, legMm);
  if (perFeed === null || !(travelMmPerMin > 0)) return null;
  return ranged(travelMmPerMin / perFeed.value, perFeed.relativeError);
}

/**
 * Width of a stringer on plate, mm, from its cross-section: a parabolic cap a seventh to a third as high as wide. A rough
 * figure for spacing beads, not for judging them. null unless feed and travel are positive.
 */
export function stringerWidthForRun(run: FilletRun): Ranged | null {
  const area = passAreaMm2(run);
  if (area === null) return null;
  const { heightOverWidth, spread } = filletFace.stringer;
  return ranged(
    Math.sqrt((1.5 * area.value) / heightOverWidth),
    Math.hypot(area.relativeError, spread - 1) / 2,
  );
}
