import { fail, issue, ok, type Result } from "@/lib/base";
import {
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

export type QuantityName =
  | "electrodeDiameterMm"
  | "gasFlowLPerMin"
  | "wireFeedMPerMin"
  | "volts"
  | "amps"
  | "ctwdMm"
  | "travelAngleDeg"
  | "workAngleDeg"
  | "travelSpeedMmPerMin"
  | "weldLengthMm"
  | "arcTimeS"
  | "thicknessMm"
  | "fitUpGapMm"
  | "targetLegMm"
  | "passCount";

export interface QuantitySpec {
  readonly label: string;
  readonly hint?: string;
  readonly unit: (units: UnitPreferences) => string;
  readonly input: InputQuantity;
  readonly parse: (typed: string, units: UnitPreferences) => Result<number, UnitsIssue>;
  /** Whether another unit exists to show beside it. */
  readonly twoUnits: boolean;
}

const length = (
  label: string,
  max: number,
  more: { hint?: string; allowZero?: boolean } = {},
): QuantitySpec => ({
  label,
  ...(more.hint === undefined ? {} : { hint: more.hint }),
  unit: (units) => units.length,
  input: "length",
  parse: (typed, units) =>
    parseLength(typed, { default: units.length, max, allowZero: more.allowZero ?? false }),
  twoUnits: true,
});

const plain = (
  label: string,
  unit: string,
  parse: (typed: string) => Result<number, UnitsIssue>,
  hint?: string,
): QuantitySpec => ({
  label,
  ...(hint === undefined ? {} : { hint }),
  unit: () => unit,
  input: "plain",
  parse,
  twoUnits: false,
});

/** A whole number from 1 to 200. */
function parsePasses(typed: string): Result<number, UnitsIssue> {
  const count = /^\s*\d{1,3}\s*$/.test(typed) ? Number(typed) : NaN;
  if (count >= 1 && count <= 200) return ok(count);
  return fail(issue("number-not-understood", [], { text: typed.trim(), example: "1 or 2" }));
}

/** Every question answered with a number. Upper bounds are those of `RunSetupSchema`. */
export const quantities: Readonly<Record<QuantityName, QuantitySpec>> = {
  electrodeDiameterMm: {
    label: "Diameter",
    unit: (units) => units.length,
    input: "wireDiameter",
    parse: (typed, units) => parseWireDiameter(typed, { default: units.length }),
    twoUnits: true,
  },
  gasFlowLPerMin: {
    label: "Gas flow",
    hint: "Read with the trigger held.",
    unit: (units) => units.flow,
    input: "flow",
    parse: (typed, units) => parseFlow(typed, { default: units.flow, max: 100, allowZero: true }),
    twoUnits: true,
  },
  wireFeedMPerMin: {
    label: "Wire feed",
    unit: (units) => units.wireFeed,
    input: "wireFeed",
    parse: (typed, units) => parseWireFeed(typed, { default: units.wireFeed }),
    twoUnits: true,
  },
  volts: plain("Voltage", "V", (typed) => parseVolts(typed)),
  amps: plain("Current", "A", (typed) => parseAmps(typed)),
  ctwdMm: length("Tip to work", 150, { hint: "Contact tip to plate, gun held as when welding." }),
  travelAngleDeg: plain(
    "Travel angle",
    "°",
    (typed) => parseAngle(typed, { max: 90 }),
    "Off square, along the weld.",
  ),
  workAngleDeg: plain(
    "Work angle",
    "°",
    (typed) => parseAngle(typed, { max: 180 }),
    "From the first plate; 45 splits a T-joint.",
  ),
  travelSpeedMmPerMin: {
    label: "Travel speed",
    unit: (units) => units.travel,
    input: "travel",
    parse: (typed, units) => parseTravelSpeed(typed, { default: units.travel }),
    twoUnits: true,
  },
  weldLengthMm: length("Weld length", 20_000),
  arcTimeS: plain("Arc time", "s", (typed) => parseDuration(typed), "Such as 93, 1:33 or 1 min 33 s."),
  thicknessMm: length("Thickness", 500, { hint: "The thinner part. Gauge works too: 16 ga." }),
  fitUpGapMm: length("Gap at fit-up", 50, { allowZero: true }),
  passCount: plain("Layer number", "", parsePasses, "1 for the first run in this joint."),
  targetLegMm: length("Leg asked for", 100, { hint: "Fillet leg on the drawing." }),
};
