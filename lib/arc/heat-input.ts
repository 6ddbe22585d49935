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
