import type { Source } from "@/lib/base";
import type { ElectrodeClass } from "./electrode-class";
import type { Gas, Polarity } from "./names";
import { sprayRise, sprayRows, spraySource, tungstenRows, tungstenSource } from "./tables/current-rows";
import { isInchSize } from "./wire-size";

export interface AmpsSpan {
  readonly low: number;
  readonly high: number;
  readonly source: Source;
}

/** Amps a tungsten of this diameter (mm) carries on a polarity; null for a size or polarity nobody gives. */
export function tungstenAmps(diameterMm: number, polarity: Polarity): AmpsSpan | null {
  const span = tungstenRows.find((row) => isInchSize(row.diameterIn, diameterMm))?.amps[polarity] ?? null;
  return span && { low: span[0], high: span[1], source: tungstenSource };
}

/**
 * The current from which solid wire sprays, A: below it the wire dips or drops. null for a gas that does not spray
 * (carbon dioxide, 75/25), an unknown gas, a cored wire or a size nobody gives.
 */
export function sprayTransitionAmps(
  electrode: ElectrodeClass,
  diameterMm: number,
  gas: Gas | null,
): AmpsSpan | null {
  const rise = gas === null ? undefined : sprayRise[gas];
  const row = sprayRows.find((one) => isInchSize(one.diameterIn, diameterMm));
  if (electrode.process !== "GMAW" || rise === undefined || row === undefined) return null;
  const amps = electrode.metal === "stainless" ? row.stainless : row.carbonSteel;
  return { low: amps * rise[0], high: amps * rise[1], source: spraySource };
}
