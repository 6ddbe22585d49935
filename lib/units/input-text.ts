import { decimals } from "./decimals";
import { mixedNumber, SIXTY_FOURTHS } from "./fraction";
import { wireSize } from "./parse-wire-diameter";
import type { UnitPreferences } from "./preferences";
import { L_PER_MIN_PER_CFH, M_PER_MIN_PER_IPM, MM_PER_INCH } from "./tables/factors";

export type InputQuantity = "length" | "wireDiameter" | "wireFeed" | "travel" | "flow" | "plain";

/** How far the text may stand from the stored value and still count as the same: binary dust, nothing a person typed. */
const SAME = 1e-9;

/**
 * What to put into an input field for a stored (metric) value: the shortest bare number in the person's unit that reads
 * back as the same value. What was typed in that unit comes back as typed: 1/8 in, 300 in/min. "plain" is V, A, ° and s.
 */
export function inputText(
  quantity: InputQuantity,
  value: number | null,
  preferences: UnitPreferences,
): string {
  if (value === null) return "";
  const size = quantity === "wireDiameter" ? wireSize(value) : null;
  if (size !== null) return preferences.length === "in" ? size.inchName : decimals(size.mm, 2);
  const number = inUnit(quantity, value, preferences);
  const isInches = (quantity === "length" || quantity === "wireDiameter") && preferences.length === "in";
  const count = Math.round(number * SIXTY_FOURTHS);
  if (isInches && count > 0 && Math.abs(count / SIXTY_FOURTHS - number) <= SAME * number) {
    return mixedNumber(count);
  }
  return shortest(number);
}

/** A stored value in the unit the person reads it in. */
export const inUnit = (quantity: InputQuantity, value: number, preferences: UnitPreferences): number =>
  value / factor(quantity, preferences);

function factor(quantity: InputQuantity, { length, wireFeed, travel, flow }: UnitPreferences): number {
  if (quantity === "wireFeed") return wireFeed === "in/min" ? M_PER_MIN_PER_IPM : 1;
  if (quantity === "travel") return travel === "in/min" ? MM_PER_INCH : 1;
  if (quantity === "flow") return flow === "cfh" ? L_PER_MIN_PER_CFH : 1;
  return quantity !== "plain" && length === "in" ? MM_PER_INCH : 1;
}

/** At most 12 decimals: beyond that two doubles of this size differ only by dust. */
function shortest(value: number): string {
  for (let places = 0; places < 12; places += 1) {
    const text = decimals(value, places);
    if (Math.abs(Number(text) - value) <= SAME * Math.abs(value)) return text;
  }
  return decimals(value, 12);
}
