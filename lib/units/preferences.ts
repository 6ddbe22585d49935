export type LengthUnit = "mm" | "in";
export type LengthSystem = "metric" | "inch";
export type WireFeedUnit = "m/min" | "in/min";
export type TravelUnit = "mm/min" | "in/min";
export type FlowUnit = "L/min" | "cfh";

/** The units one person reads and types. Stored values are always metric; these exist only on screen and paper. */
export interface UnitPreferences {
  readonly length: LengthUnit;
  readonly wireFeed: WireFeedUnit;
  readonly travel: TravelUnit;
  readonly flow: FlowUnit;
}

export const metric: UnitPreferences = { length: "mm", wireFeed: "m/min", travel: "mm/min", flow: "L/min" };
export const inch: UnitPreferences = { length: "in", wireFeed: "in/min", travel: "in/min", flow: "cfh" };

export const lengthSystem = (unit: LengthUnit): LengthSystem => (unit === "mm" ? "metric" : "inch");
