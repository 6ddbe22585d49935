import { ok, type Result } from "@/lib/base";
import { refuse, type ParseOptions, type UnitsIssue } from "./issue";
import { readNumber } from "./read-number";
import { tidy } from "./tidy";

/** How one kind of quantity is read. */
export interface QuantityKind {
  /** Name of the unit the function returns, for messages. */
  readonly unit: string;
  /** Factor of a unit name, as tidied, to the returned unit; undefined when the name is not known. */
  readonly factorOf: (unitName: string) => number | undefined;
  readonly max: number;
  /** What could be typed, shown with every refusal. */
  readonly example: string;
}

export interface SplitText {
  readonly negative: boolean;
  readonly number: string;
  readonly unit: string;
}

/** Parts a tidied text into sign, number and unit name; null when it does not start with a number. */
export function splitQuantity(text: string): SplitText | null {
  const match = /^([+-]?) ?([\d.,](?:[\d.,/ -]*[\d.,])?)(.*)$/.exec(text);
  if (!match) return null;
  const [, sign = "", number = "", unit = ""] = match;
  return { negative: sign === "-", number, unit: unit.trim().replace(/(?<=[a-z])\.$/, "") };
}

/** Reads a number with or without a unit; a bare number is in `defaultUnit`. */
export function readQuantity(
  typed: string,
  kind: QuantityKind,
  defaultUnit: string,
  options: ParseOptions,
): Result<number, UnitsIssue> {
  const no = (code: UnitsIssue["code"], data: Readonly<Record<string, string | number>> = {}) =>
    refuse(code, typed, options, { example: kind.example, ...data });
  const text = tidy(typed);
  if (text === "") return no("number-missing");
  const parts = splitQuantity(text);
  if (parts === null) return no("number-not-understood");
  const reading = readNumber(parts.number);
  if ("code" in reading) return no(reading.code, reading.data);
  const factor = kind.factorOf(parts.unit === "" ? defaultUnit.toLowerCase() : parts.unit);
  if (factor === undefined) return no("unit-unknown", { unit: parts.unit });
  if (parts.negative && reading.value !== 0)
    return no("number-negative", options.belowZero === undefined ? {} : { instead: options.belowZero });
  return checkBounds(reading.value * factor, kind, typed, options);
}

/** The last step of every parser: zero, too small, too large. Bounds are inclusive. */
export function checkBounds(
  value: number,
  kind: Pick<QuantityKind, "unit" | "max" | "example">,
  typed: string,
  options: ParseOptions,
): Result<number, UnitsIssue> {
  const { min = 0, max = kind.max, allowZero = false } = options;
  const bounds = { example: kind.example, unit: kind.unit, min, max };
  if (value === 0 && !allowZero) return refuse("number-zero", typed, options, bounds);
  if (value < min) return refuse("number-too-small", typed, options, bounds);
  if (!(value <= max)) return refuse("number-too-large", typed, options, bounds);
  return ok(value);
}
