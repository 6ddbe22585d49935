import { trueWireSize } from "@/lib/trade";
import type { Wire } from "./amps-for-feed";
import { inchOnly } from "./burn-off-for";
import { ranged, type Ranged } from "./ranged";
import {
  AREA_RELATIVE_ERROR,
  depositionRows,
  STEEL_KG_PER_MM3,
  type DepositionRow,
} from "./tables/deposition-rows";
import type { WireKind } from "./tables/burn-off-rows";

/** Cross-section of a round wire, mm². */
export function wireAreaMm2(diameterMm: number): number {
  return (Math.PI * diameterMm ** 2) / 4;
}

/** Mass per length of wire, kg/m; `fill` is 1 for solid wire. */
export function linearMassKgPerM(diameterMm: number, fill = 1, densityKgPerMm3 = STEEL_KG_PER_MM3): number {
  return wireAreaMm2(diameterMm) * fill * densityKgPerMm3 * 1000;
}

/** Wire melted per hour, kg/h, from feed in m/min. Deposited metal is this times the deposition efficiency. */
export function meltOffKgPerH(feedMPerMin: number, linearMass: number): number {
  return feedMPerMin * 60 * linearMass;
}

/** Efficiency left when `stubMm` of a covered electrode of `lengthMm` is thrown away. NaN when the stub is longer. */
export function stubEfficiency(efficiency: number, lengthMm: number, stubMm: number): number {
  return stubMm <= lengthMm ? (efficiency * (lengthMm - stubMm)) / lengthMm : NaN;
}

export interface Deposit {
  readonly diameterMm: number;
  readonly feedMmPerS: number;
  readonly fill: number;
  readonly efficiency: number;
}

/** Metal of a wire at a feed in m/min, by the true diameter of its size, fill and efficiency of its kind. */
export function depositOf(wire: Wire, feedMPerMin: number): Deposit & { readonly areaRelativeError: number } {
  const { diameterMm, areaRelativeError } = trueWireSize(wire.diameterMm, inchOnly(wire.kind));
  const { fill, efficiency } = depositionFor(wire.kind);
  return {
    diameterMm,
    feedMmPerS: (feedMPerMin * 1000) / 60,
    fill,
    efficiency,
    areaRelativeError: Math.hypot(AREA_RELATIVE_ERROR, areaRelativeError),
  };
}

/** Deposition rate, kg/h, of steel wire at a feed in m/min. */
export function depositionKgPerH(wire: Wire, feedMPerMin: number): Ranged {
  const { diameterMm, fill, efficiency, areaRelativeError } = depositOf(wire, feedMPerMin);
  return ranged(
    efficiency * meltOffKgPerH(feedMPerMin, linearMassKgPerM(diameterMm, fill)),
    areaRelativeError,
  );
}

/** Deposited cross-section, mm²: metal per second over travel. NaN unless travel is positive. */
export function depositAreaMm2(
  { diameterMm, feedMmPerS, fill, efficiency }: Deposit,
  travelMmPerS: number,
): number {
  if (!(travelMmPerS > 0)) return NaN;
  return (wireAreaMm2(diameterMm) * fill * efficiency * feedMmPerS) / travelMmPerS;
}

/** Travel that leaves a given cross-section, mm/s. NaN unless the area is positive. */
export function travelForAreaMmPerS(deposit: Deposit, areaMm2: number): number {
  return depositAreaMm2(deposit, areaMm2);
}

/** Efficiency and fill for a kind of wire, with their sources. */
export function depositionFor(kind: WireKind): DepositionRow {
  return depositionRows.find((row) => row.kind === kind)!;
}
