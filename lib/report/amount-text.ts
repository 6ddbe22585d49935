import { assertNever } from "@/lib/base";
import { usualShare, type Amount, type Change, type UnitKind } from "@/lib/diagnose";
import { spanText } from "@/lib/setup";
import {
  formatAmps,
  formatAngle,
  formatFlow,
  formatQuantity,
  formatTravelSpeed,
  formatVolts,
  formatWireFeed,
  L_PER_MIN_PER_CFH,
  lengthSystem,
  M_PER_MIN_PER_IPM,
  MM_PER_INCH,
  type UnitPreferences,
} from "@/lib/units";
import { lengthText, statedLengthText } from "./length-text";

/** A value of the diagnosis in the person's units. */
export function valueText(value: number, kind: UnitKind, units: UnitPreferences): string {
  switch (kind) {
    case "wire-feed":
      return formatWireFeed(value, units.wireFeed);
    case "voltage":
      return formatVolts(value);
    case "current":
      return formatAmps(value);
    case "small-length":
      return lengthText(value, units);
    case "travel-speed":
      return formatTravelSpeed(value, units.travel);
    case "gas-flow":
      return formatFlow(value, units.flow);
    case "angle":
      return formatAngle(value);
    case "temperature":
      return formatQuantity("temperature", value, lengthSystem(units.length));
    case "heat-input":
      return formatQuantity("heatInput", value, lengthSystem(units.length));
    case "count":
      return formatQuantity("count", value, "metric");
    default:
      return assertNever(kind);
  }
}

/** "arc current 142 A, give or take 15 %"; "window 12.7 to 25.4 mm" */
export function amountText(amount: Amount, units: UnitPreferences): string {
  const { quantity, valueSi, toSi, unitKind, relativeError } = amount;
  const value = valueText(valueSi, unitKind, units);
  const text = `${quantity} ${toSi === undefined ? value : spanText(value, valueText(toSi, unitKind, units))}`;
  return relativeError ? `${text}, give or take ${Math.round(relativeError * 100)} %` : text;
}

/** What a hand or a knob can be set to: the step a proposed value is rounded to, in the unit it is shown in. */
const settable: Partial<Record<UnitKind, { readonly metric: number; readonly inch: number }>> = {
  "wire-feed": { metric: 0.1, inch: 5 * M_PER_MIN_PER_IPM },
  voltage: { metric: 0.5, inch: 0.5 },
  current: { metric: 5, inch: 5 },
  "travel-speed": { metric: 5, inch: 0.5 * MM_PER_INCH },
  "gas-flow": { metric: 0.5, inch: L_PER_MIN_PER_CFH },
  angle: { metric: 1, inch: 1 },
};

/** A value to set, rounded to what anybody can set in the reader's units; small lengths in halves of a millimetre or sixteenths of an inch. */
function settableSi(value: number, kind: UnitKind, units: UnitPreferences): number {
  const isInch = units.length === "in";
  const step =
    kind === "small-length"
      ? isInch
        ? MM_PER_INCH / 16
        : 0.5
      : settable[kind]?.[isInch ? "inch" : "metric"];
  // A target below one step (a gap of nothing) stays as it is.
  return step === undefined || (kind === "small-length" && value < step)
    ? value
    : Math.round(value / step) * step;
}

/** The change as its step says it: 25.5 V on the knob, not the 25.7 V that were worked out. */
export function settableChange(change: Change, units: UnitPreferences): Change {
  const { toSi, unitKind } = change;
  return toSi === null || unitKind === null ? change : { ...change, toSi: settableSi(toSi, unitKind, units) };
}

/** A value to set in words: as it can be set, or as it stands where it is less than one step. */
export function settableText(value: number, kind: UnitKind, units: UnitPreferences): string {
  const target = settableSi(value, kind, units);
  if (kind !== "small-length") return valueText(target, kind, units);
  const step = units.length === "in" ? MM_PER_INCH / 16 : 0.5;
  return value < step ? lengthText(value, units) : statedLengthText(target, units);
}

/** As much of a change as its step is worded from. */
export type WordedChange = Pick<
  Change,
  "quantity" | "unitKind" | "fromSi" | "toSi" | "stepSi" | "fromText" | "toText" | "direction"
>;

/** The step itself: "Tip to work from 25 mm down to 19 mm", "From DCEP to DCEN", or nothing where there is no number. */
export function changeText(change: WordedChange, units: UnitPreferences): string {
  const { quantity, unitKind, fromSi, toSi, fromText, toText, direction } = change;
  if (toText !== null) return fromText === null ? `To ${toText}` : `From ${fromText} to ${toText}`;
  if (unitKind === null) return "";
  const name = quantity === null ? "" : `${quantity.charAt(0).toUpperCase()}${quantity.slice(1)} `;
  if (toSi === null) {
    const by = change.stepSi === null ? shareText(change) : stepText(change.stepSi, unitKind, units);
    return by === "" ? "" : `${name}${by}`;
  }
  const to = settableText(toSi, unitKind, units);
  if (fromSi === null) return direction === "do" ? `${name}${to}` : `${name}to ${to}`;
  const way = direction === "lower" ? "down to" : direction === "raise" ? "up to" : "to";
  // Both ends in one style: from 7/16 in to 13/16 in, not from 0.433 in.
  const from =
    unitKind === "small-length" ? statedLengthText(fromSi, units) : valueText(fromSi, unitKind, units);
  return `${name}from ${from} ${way} ${to}`;
}

/** The usual shares as people say them. */
const shareWords: Readonly<Record<string, string>> = { "0.1": "about a tenth", "0.2": "about a fifth" };

/** "up by about a fifth": where nobody wrote down from where. */
function shareText(change: WordedChange): string {
  const share = usualShare(change);
  if (share === null) return "";
  return `${change.direction === "lower" ? "down" : "up"} by ${shareWords[share] ?? `about ${share}`}`;
}

/** "down by 1 V": for a reading that was not recorded. */
function stepText(stepSi: number, unitKind: UnitKind, units: UnitPreferences): string {
  return `${stepSi < 0 ? "down" : "up"} by ${settableText(Math.abs(stepSi), unitKind, units)}`;
}
