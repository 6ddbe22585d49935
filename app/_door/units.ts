import { z } from "zod";

export const UNITS_SETTING = "units";
export const UnitChoiceSchema = z.enum(["metric", "inch"]);
/** The one choice the screen offers; lib/units turns it into a unit for each kind of quantity. */
export type UnitChoice = z.infer<typeof UnitChoiceSchema>;
