import {
  formatAmps,
  formatAngle,
  formatDuration,
  formatFlow,
  formatLength,
  formatThickness,
  formatTravelSpeed,
  formatVolts,
  formatWireDiameter,
  formatWireFeed,
  lengthSystem,
  type UnitPreferences,
} from "@/lib/units";
import type { SetupField } from "./finding";
import type { ShowReading } from "./sentences";

/** Writes any numeric field of a set-up in the person's units. Tip distance and lengths keep no false decimals. */
export function showReading(units: UnitPreferences): ShowReading {
  const system = lengthSystem(units.length);
  return (field: SetupField, value: number) => {
    switch (field) {
      case "wireFeedMPerMin":
        return formatWireFeed(value, units.wireFeed);
      case "travelSpeedMmPerMin":
        return formatTravelSpeed(value, units.travel);
      case "gasFlowLPerMin":
        return formatFlow(value, units.flow);
      case "volts":
        return formatVolts(value);
      case "amps":
        return formatAmps(value);
      case "travelAngleDeg":
      case "workAngleDeg":
        return formatAngle(value);
      case "arcTimeS":
        return formatDuration(value);
      case "electrodeDiameterMm":
        return formatWireDiameter(value, system);
      case "thicknessMm":
        return formatThickness(value, system);
      case "ctwdMm":
        return formatLength(system === "metric" ? Math.round(value * 10) / 10 : value, { system });
      case "weldLengthMm":
      case "fitUpGapMm":
      case "targetLegMm":
        return formatLength(value, { system });
      default:
        return String(value);
    }
  };
}
