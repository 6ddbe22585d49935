import { visibleDecimals } from "./decimals";
import type { FlowUnit, TravelUnit, WireFeedUnit } from "./preferences";
import { L_PER_MIN_PER_CFH, M_PER_MIN_PER_IPM, MM_PER_INCH } from "./tables/factors";

/** m/min -> "7.62 m/min" (to 0.01) or "300 in/min" (to 1). */
export function formatWireFeed(mPerMin: number, unit: WireFeedUnit): string {
  return unit === "m/min"
    ? `${visibleDecimals(mPerMin, 2)} m/min`
    : `${visibleDecimals(mPerMin / M_PER_MIN_PER_IPM, 0)} in/min`;
}

/** mm/min -> "254 mm/min" (to 1) or "10 in/min" (to 0.1). */
export function formatTravelSpeed(mmPerMin: number, unit: TravelUnit): string {
  return unit === "mm/min"
    ? `${visibleDecimals(mmPerMin, 0)} mm/min`
    : `${visibleDecimals(mmPerMin / MM_PER_INCH, 1)} in/min`;
}

/** L/min -> "16.5 L/min" (to 0.1) or "35 cfh" (to 1). */
export function formatFlow(lPerMin: number, unit: FlowUnit): string {
  return unit === "L/min"
    ? `${visibleDecimals(lPerMin, 1)} L/min`
    : `${visibleDecimals(lPerMin / L_PER_MIN_PER_CFH, 0)} cfh`;
}

/** "18.5 V", to 0.1. */
export const formatVolts = (volts: number): string => `${visibleDecimals(volts, 1)} V`;
/** "140 A", to 1. */
export const formatAmps = (amps: number): string => `${visibleDecimals(amps, 0)} A`;
/** "15°", to 1. */
export const formatAngle = (degrees: number): string => `${visibleDecimals(degrees, 0)}°`;
