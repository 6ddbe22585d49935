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

/** For sheets that travel between shops: the reader's units first, the others in brackets: "7.62 m/min (300 in/min)". */
export function inBothUnits(
  preferences: UnitPreferences,
  format: (preferences: UnitPreferences) => string,
): string {
  return `${format(preferences)} (${format(otherUnits(preferences))})`;
}
