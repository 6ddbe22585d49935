import type { Process } from "@/lib/trade";
import { heatFactors } from "./tables/heat-factors";

/** What arc energy is made of. */
export interface ArcReadings {
  readonly volts: number;
  readonly amps: number;
  readonly travelMmPerS: number;
}

/**
 * Arc energy, kJ/mm: U·I/(1000·v). US codes call this heat input, without efficiency. NaN unless travel is positive.
 */
export function arcEnergyKJPerMm({ volts, amps, travelMmPerS }: ArcReadings): number {
  return travelMmPerS > 0 ? (volts * amps) / (1000 * travelMmPerS) : NaN;
}

/** Heat input in the European sense, kJ/mm: k times arc energy, k by process (EN 1011-1). */
export function heatInputKJPerMm(readings: ArcReadings, process: Process): number {
  return heatFactors[process].k * arcEnergyKJPerMm(readings);
}

/** Travel for a wanted arc energy, mm/s. NaN unless the energy is positive. */
export function travelForEnergyMmPerS(volts: number, amps: number, energyKJPerMm: number): number {
  return energyKJPerMm > 0 ? (volts * amps) / (1000 * energyKJPerMm) : NaN;
}

/** Travel speed, mm/min, from bead length and arc-on time without stops. NaN unless the time is positive. */
export function travelMmPerMin(lengthMm: number, arcTimeS: number): number {
  return arcTimeS > 0 ? lengthMm / (arcTimeS / 60) : NaN;
}
