import type { Result } from "@/lib/base";
import type { ParseOptions, UnitsIssue } from "./issue";
import { readQuantity, type QuantityKind } from "./read-quantity";

const named = (unit: string, max: number, example: string, names: readonly string[]): QuantityKind => ({
  unit,
  max,
  example,
  factorOf: (name) => (names.includes(name) ? 1 : undefined),
});

const volts = named("V", 100, "18.5 V", ["v", "volt", "volts", "vdc"]);
const amps = named("A", 1500, "140 A", ["a", "amp", "amps", "ampere", "amperes"]);
const degrees = named("°", 180, "15°", ["°", "deg", "degs", "degree", "degrees"]);
const percent = named("%", 100, "60 %", ["%", "percent"]);

/** Arc voltage, V. */
export function parseVolts(typed: string, options: ParseOptions = {}): Result<number, UnitsIssue> {
  return readQuantity(typed, volts, "v", options);
}

/** Welding current, A. */
export function parseAmps(typed: string, options: ParseOptions = {}): Result<number, UnitsIssue> {
  return readQuantity(typed, amps, "a", options);
}

/** An angle, degrees, 0 included. Drag or push is a choice beside the number, never a sign. */
export function parseAngle(typed: string, options: ParseOptions = {}): Result<number, UnitsIssue> {
  return readQuantity(typed, degrees, "°", { allowZero: true, ...options });
}

/** A part of a whole, percent, 100 included; 0 where `allowZero` says so. */
export function parsePercent(typed: string, options: ParseOptions = {}): Result<number, UnitsIssue> {
  return readQuantity(typed, percent, "%", options);
}
