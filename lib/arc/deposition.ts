import { trueWireSize } from "@/lib/trade";
import type { Wire } from "./amps-for-feed";
import { inchOnly } from "./burn-off-for";
import { AREA_RELATIVE_ERROR, depositionRows, type DepositionRow } from "./tables/deposition-rows";
import type { WireKind } from "./tables/burn-off-rows";

/** Cross-section of a round wire, mm². */
function wireAreaMm2(diameterMm: number): number {
  return (Math.PI * diameterMm ** 2) / 4;
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
