import { findingDoubt, findingSentence, type SetupField, type SetupFinding } from "@/lib/setup";
import {
  formatAmps,
  formatAngle,
  formatDuration,
  formatFlow,
  formatTravelSpeed,
  formatVolts,
  formatWireDiameter,
  formatWireFeed,
  lengthSystem,
  type UnitPreferences,
} from "@/lib/units";
import { statedLengthText } from "./length-text";

/** A number of a set-up field in the person's units. */
export function readingText(field: SetupField, value: number, units: UnitPreferences): string {
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
      return formatWireDiameter(value, lengthSystem(units.length));
    case "passCount":
      return String(value);
    default:
      return statedLengthText(value, units);
  }
}

/** What the set-up check found, one sentence each, worst first. */
export function findingLines(findings: readonly SetupFinding[], units: UnitPreferences): readonly string[] {
  return findings.map((found) => {
    const sentence = findingSentence(found, (field, value) => readingText(field, value, units));
    const doubt = findingDoubt(found);
    return doubt === null ? sentence : `${sentence} (${doubt})`;
  });
}
