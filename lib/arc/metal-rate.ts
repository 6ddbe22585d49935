import type { Wire } from "./amps-for-feed";
import { depositionFor, depositOf } from "./deposition";
import { ranged, type Ranged } from "./ranged";

/** Mass of a strand of metal, kg/h: cross-section mm², speed mm/s, density g/cm³. */
export function massRateKgPerH(areaMm2: number, speedMmPerS: number, densityGPerCm3: number): number {
  return (areaMm2 * speedMmPerS * densityGPerCm3 * 3600) / 1e6;
}

export interface MetalRate {
  /** Weld metal laid down, kg/h. */
  readonly depositKgPerH: Ranged;
  /** Wire melted off, kg/h: more, by what goes into slag, fume and spatter. */
  readonly meltOffKgPerH: Ranged;
}

/**
 * Metal of a wire at a feed (m/min), with the errors of fill, efficiency, size and dial. Fill is the mass of the wire over
 * that of solid wire of its size, so that density is that of the weld metal, g/cm³. null unless the feed is positive.
 */
export function metalRate(wire: Wire, feedMPerMin: number, densityGPerCm3: number): MetalRate | null {
  if (!(feedMPerMin > 0) || !(densityGPerCm3 > 0)) return null;
  const { diameterMm, feedMmPerS, fill, areaRelativeError } = depositOf(wire, feedMPerMin);
  const { efficiency } = depositionFor(wire.kind);
  const meltOff = massRateKgPerH((Math.PI * diameterMm ** 2 * fill) / 4, feedMmPerS, densityGPerCm3);
  return {
    depositKgPerH: ranged(meltOff * efficiency, areaRelativeError),
    meltOffKgPerH: ranged(meltOff, areaRelativeError),
  };
}
