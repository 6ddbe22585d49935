import type { Result } from "@/lib/base";
import type { ParseOptions, UnitsIssue } from "./issue";
import type { FlowUnit, TravelUnit, WireFeedUnit } from "./preferences";
import { readQuantity, type QuantityKind } from "./read-quantity";
import { lengthNames, timeNames, volumeNames } from "./tables/factors";

const own = <T>(table: Readonly<Record<string, T>>, name: string): T | undefined =>
  Object.hasOwn(table, name) ? table[name] : undefined;

/** Abbreviations of the trade, written out. */
const written: Readonly<Record<string, string>> = {
  ipm: "in/min",
  mpm: "m/min",
  lpm: "l/min",
  cfh: "ft3/h",
  scfh: "ft3/h",
};

/** Base units (mm or L) per minute of a name such as "in/min", "cm per min", "ipm". */
function perMinute(amounts: Readonly<Record<string, number>>, name: string): number | undefined {
  const [above = "", below = "", more] = (own(written, name) ?? name).split(/ ?\/ ?| per /);
  const amount = own(amounts, above.replace(/\.$/, ""));
  const seconds = own(timeNames, below);
  return amount === undefined || seconds === undefined || more !== undefined
    ? undefined
    : (amount * 60) / seconds;
}
const scaled = (factor: number | undefined, by: number) => (factor === undefined ? undefined : factor * by);

const wireFeedKind: QuantityKind = {
  unit: "m/min",
  factorOf: (name) => scaled(perMinute(lengthNames, name), 1 / 1000),
  max: 40,
  example: "7.6 m/min or 300 in/min",
};
const travelKind: QuantityKind = {
  unit: "mm/min",
  factorOf: (name) => perMinute(lengthNames, name),
  max: 5000,
  example: "250 mm/min or 10 in/min",
};
const flowKind: QuantityKind = {
  unit: "L/min",
  factorOf: (name) => perMinute(volumeNames, name),
  max: 100,
  example: "17 L/min or 35 cfh",
};

/** Wire feed speed, m/min. Reads in/min, ipm, m/min, cm/min, mm/s; a bare number is in `default`. */
export function parseWireFeed(
  typed: string,
  options: ParseOptions & { readonly default: WireFeedUnit },
): Result<number, UnitsIssue> {
  return readQuantity(typed, wireFeedKind, options.default, options);
}

/** Travel speed, mm/min. Reads in/min, ipm, mm/min, cm/min, mm/s; a bare number is in `default`. */
export function parseTravelSpeed(
  typed: string,
  options: ParseOptions & { readonly default: TravelUnit },
): Result<number, UnitsIssue> {
  return readQuantity(typed, travelKind, options.default, options);
}

/** Gas flow, L/min. Reads L/min, lpm, cfh, ft³/h; a bare number is in `default`. Pass `allowZero` for "no gas". */
export function parseFlow(
  typed: string,
  options: ParseOptions & { readonly default: FlowUnit },
): Result<number, UnitsIssue> {
  return readQuantity(typed, flowKind, options.default, options);
}
