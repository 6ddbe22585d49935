import { decimals } from "./decimals";
import { inputText, inUnit, type InputQuantity } from "./input-text";
import type { UnitPreferences } from "./preferences";

/** Nobody types more decimals than that: a number that needs them was entered in the other unit. */
const MOST_TYPED = 4;

/** What a shop reads of a number that was entered in the other unit. */
const places: Readonly<Record<InputQuantity, number>> = {
  length: 3,
  wireDiameter: 3,
  wireFeed: 2,
  travel: 1,
  flow: 1,
  plain: 4,
};

/**
 * What a field shows of a stored (metric) value: as it was typed, where it was typed in this unit (see `inputText`); a
 * number that was entered in the other unit as a shop reads it, 0.748 in for 19 mm. Only for fields that store what is
 * typed into them and never what they show.
 */
export function fieldText(
  quantity: InputQuantity,
  value: number | null,
  preferences: UnitPreferences,
): string {
  const text = inputText(quantity, value, preferences);
  const typed = (text.split(".")[1]?.length ?? 0) <= MOST_TYPED;
  return value === null || typed ? text : decimals(inUnit(quantity, value, preferences), places[quantity]);
}
