import { fail, issue, ok, type Result } from "@/lib/base";
import {
  formatAmps,
  formatAngle,
  formatDuration,
  formatFlow,
  formatLength,
  formatThickness,
  formatTravelSpeed,
  formatVolts,
  formatWireDiameter,
  formatWireFeed,
  lengthSystem,
  parseAmps,
  parseAngle,
  parseDuration,
  parseFlow,
  parseLength,
  parseTravelSpeed,
  parseVolts,
  parseWireDiameter,
  parseWireFeed,
  type InputQuantity,
  type UnitPreferences,
  type UnitsIssue,
} from "@/lib/units";

/** What a number may be, in its SI unit. `from`: that number itself is an answer; without it, anything above nought. */
export interface Bounds {
  readonly from?: number;
  readonly max: number;
}

/** How one sort of number is asked for, read and written. */
export interface QuantityKind {
  /** The person's unit, as it stands behind the label; empty for a count. */
  readonly unit: (units: UnitPreferences) => string;
  /** What `inputText` writes back into a field. */
  readonly input: InputQuantity;
  /** Whether another unit exists to show beside it. */
  readonly twoUnits: boolean;
  /** What was typed, in the SI unit of the field. Issues: those of lib/units. */
  readonly parse: (typed: string, units: UnitPreferences, bounds: Bounds) => Result<number, UnitsIssue>;
  /** A value in the person's units. */
  readonly show: (value: number, units: UnitPreferences) => string;
  /** As a sheet states it, where that differs: a length that somebody set is a fraction in inches. */
  readonly state?: (value: number, units: UnitPreferences) => string;
}

const limits = ({ from, max }: Bounds) => ({ max, allowZero: from === 0 });

const length: QuantityKind = {
  unit: (units) => units.length,
  input: "length",
  twoUnits: true,
  parse: (typed, units, bounds) => parseLength(typed, { default: units.length, ...limits(bounds) }),
  show: (value, units) => formatLength(value, { system: lengthSystem(units.length) }),
};

const stated = (value: number, units: UnitPreferences): string =>
  formatLength(value, { system: lengthSystem(units.length), style: "fraction" });

/** A distance held by hand keeps no false decimals. */
function tenths(value: number, units: UnitPreferences): string {
  const system = lengthSystem(units.length);
  return formatLength(system === "metric" ? Math.round(value * 10) / 10 : value, { system });
}

const plain = (
  unit: string,
  parse: QuantityKind["parse"],
  show: (value: number) => string,
): QuantityKind => ({ unit: () => unit, input: "plain", twoUnits: false, parse, show });

/** A whole number within its bounds. */
function parseCount(
  typed: string,
  _: UnitPreferences,
  { from = 1, max }: Bounds,
): Result<number, UnitsIssue> {
  const count = /^\s*\d{1,3}\s*$/.test(typed) ? Number(typed) : NaN;
  if (count >= from && count <= max) return ok(count);
  return fail(issue("number-not-understood", [], { text: typed.trim(), example: "1 or 2" }));
}

/** Every sort of number that a set-up holds. */
export const quantityKinds = {
  "wire-diameter": {
    ...length,
    input: "wireDiameter",
    parse: (typed, units, { max }) => parseWireDiameter(typed, { default: units.length, max }),
    show: (value, units) => formatWireDiameter(value, lengthSystem(units.length)),
  },
  /** Measured: decimals in either system. */
  "measured-length": length,
  /** Set or asked for. */
  "stated-length": { ...length, state: stated },
  "tip-distance": { ...length, show: tenths, state: stated },
  thickness: { ...length, show: (value, units) => formatThickness(value, lengthSystem(units.length)) },
  "wire-feed": {
    unit: (units) => units.wireFeed,
    input: "wireFeed",
    twoUnits: true,
    parse: (typed, units, bounds) => parseWireFeed(typed, { default: units.wireFeed, ...limits(bounds) }),
    show: (value, units) => formatWireFeed(value, units.wireFeed),
  },
  "travel-speed": {
    unit: (units) => units.travel,
    input: "travel",
    twoUnits: true,
    parse: (typed, units, bounds) => parseTravelSpeed(typed, { default: units.travel, ...limits(bounds) }),
    show: (value, units) => formatTravelSpeed(value, units.travel),
  },
  flow: {
    unit: (units) => units.flow,
    input: "flow",
    twoUnits: true,
    parse: (typed, units, bounds) => parseFlow(typed, { default: units.flow, ...limits(bounds) }),
    show: (value, units) => formatFlow(value, units.flow),
  },
  volts: plain("V", (typed, _, bounds) => parseVolts(typed, limits(bounds)), formatVolts),
  amps: plain("A", (typed, _, bounds) => parseAmps(typed, limits(bounds)), formatAmps),
  angle: plain("°", (typed, _, bounds) => parseAngle(typed, limits(bounds)), formatAngle),
  duration: plain("s", (typed, _, bounds) => parseDuration(typed, limits(bounds)), formatDuration),
  count: plain("", parseCount, String),
} as const satisfies Readonly<Record<string, QuantityKind>>;
export type QuantityKindName = keyof typeof quantityKinds;
