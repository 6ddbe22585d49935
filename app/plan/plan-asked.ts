import { readPlanQuery, type PlanAsk } from "@/lib/plan";
import type { UnitPreferences } from "@/lib/units";
import { currentUnits } from "../_door/current-units";

/** What an address asks a plan by, rounded to the dials of whoever looks. */
export async function planAsked(params: URLSearchParams): Promise<{ ask: PlanAsk; units: UnitPreferences }> {
  const { choice, preferences } = await currentUnits();
  return { ask: { ...readPlanQuery(params), dials: choice }, units: preferences };
}
