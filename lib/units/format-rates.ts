import { formatQuantity } from "./format-quantity";
import type { FlowUnit, TravelUnit, WireFeedUnit } from "./preferences";

/** m/min -> "7.62 m/min" or "300 in/min". */
export const formatWireFeed = (mPerMin: number, unit: WireFeedUnit): string =>
  formatQuantity("wireFeed", mPerMin, unit === "m/min" ? "metric" : "inch");

/** mm/min -> "254 mm/min" or "10 in/min". */
export const formatTravelSpeed = (mmPerMin: number, unit: TravelUnit): string =>
  formatQuantity("travelSpeed", mmPerMin, unit === "mm/min" ? "metric" : "inch");

/** L/min -> "16.5 L/min" or "35 cfh". */
export const formatFlow = (lPerMin: number, unit: FlowUnit): string =>
  formatQuantity("gasFlow", lPerMin, unit === "L/min" ? "metric" : "inch");

/** "18.5 V" */
export const formatVolts = (volts: number): string => formatQuantity("voltage", volts, "metric");
/** "140 A" */
export const formatAmps = (amps: number): string => formatQuantity("current", amps, "metric");
/** "15°" */
export const formatAngle = (degrees: number): string => formatQuantity("angle", degrees, "metric");
