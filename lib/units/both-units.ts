import type { UnitPreferences } from "./preferences";

/** The same preferences with each unit swapped for the other system's. */
export function otherUnits(preferences: UnitPreferences): UnitPreferences {
  return {
    length: preferences.length === "mm" ? "in" : "mm",
    wireFeed: preferences.wireFeed === "m/min" ? "in/min" : "m/min",
    travel: preferences.travel === "mm/min" ? "in/min" : "mm/min",
    flow: preferences.flow === "L/min" ? "cfh" : "L/min",
  };
}
