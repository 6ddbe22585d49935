import { invariant } from "@/lib/base";

/** A number to at most `places` decimals, without trailing zeros and without exponent; the point is the decimal mark. */
export function decimals(value: number, places: number): string {
  invariant(Number.isFinite(value), `a quantity to print is finite, got ${value}`);
  const fixed = value.toFixed(places);
  const short = places > 0 ? fixed.replace(/\.?0+$/, "") : fixed;
  return short === "-0" ? "0" : short;
}

/** As `decimals`, but says "under 0.01" rather than print a positive value as 0. */
export function visibleDecimals(value: number, places: number): string {
  const text = decimals(value, places);
  return text === "0" && value > 0 ? `under ${decimals(10 ** -places, places)}` : text;
}

/**
 * An uncertainty to print: one significant figure, two when it starts with 1, always rounded up so that it never
 * claims more than is known (JCGM 100:2008 7.2.6 allows rounding up). Returns the value and its decimals.
 */
export function printedUncertainty(uncertainty: number): { readonly value: number; readonly places: number } {
  const exponent = Math.floor(Math.log10(uncertainty));
  const startsWithOne = uncertainty / 10 ** exponent < 2;
  const places = Math.max(0, (startsWithOne ? 1 : 0) - exponent);
  const scale = 10 ** places;
  // 1e-9: a value that is already round in decimal must not climb a step because it is not round in binary.
  return { value: Math.ceil(uncertainty * scale - 1e-9) / scale, places };
}
