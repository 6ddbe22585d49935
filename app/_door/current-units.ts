import { cookies } from "next/headers";
import { db } from "@/lib/db";
import { readSetting } from "@/lib/store";
import { inch, metric, type UnitPreferences } from "@/lib/units";
import { UNITS_SETTING, UnitChoiceSchema, type UnitChoice } from "./units";

/** The units of whoever looks; until they choose, those of this installation; metric until anybody chose. */
export async function currentUnits(): Promise<{ choice: UnitChoice; preferences: UnitPreferences }> {
  const own = UnitChoiceSchema.safeParse((await cookies()).get(UNITS_SETTING)?.value);
  const choice = own.success
    ? own.data
    : ((await readSetting(db(), UNITS_SETTING, UnitChoiceSchema)) ?? "metric");
  return { choice, preferences: choice === "inch" ? inch : metric };
}
