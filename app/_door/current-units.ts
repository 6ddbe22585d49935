import { db } from "@/lib/db";
import { readSetting } from "@/lib/record";
import { inch, metric, type UnitPreferences } from "@/lib/units";
import { UNITS_SETTING, UnitChoiceSchema, type UnitChoice } from "./units";

/** The units of this installation; metric until somebody chooses. */
export async function currentUnits(): Promise<{ choice: UnitChoice; preferences: UnitPreferences }> {
  const choice = (await readSetting(db(), UNITS_SETTING, UnitChoiceSchema)) ?? "metric";
  return { choice, preferences: choice === "inch" ? inch : metric };
}
