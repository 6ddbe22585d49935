import { chiSquareQuantile, fQuantile } from "@/lib/numeric";

export interface Bounds {
  readonly low: number;
  readonly high: number;
}

/** A mean square with its degrees of freedom. */
export interface Term {
  readonly meanSquare: number;
  readonly degrees: number;
}

/** Two-sided, 95 %. */
const LOWER = 0.025;
const UPPER = 0.975;

const shrink = (degrees: number): number => 1 - degrees / chiSquareQuantile(UPPER, degrees);
const stretch = (degrees: number): number => degrees / chiSquareQuantile(LOWER, degrees) - 1;
const square = (value: number): number => value * value;

/**
 * Interval of a sum of weighted mean squares, weights above nought: Graybill and Wang 1980 (Journal of the American
 * Statistical Association 75, 869-873). Of one mean square it is the usual chi-square interval.
 */
export function sumBounds(terms: readonly (Term & { readonly weight: number })[]): Bounds {
  const part = ({ meanSquare, weight }: Term & { readonly weight: number }): number => meanSquare * weight;
  const whole = terms.reduce((sum, one) => sum + part(one), 0);
  const below = terms.reduce((sum, one) => sum + square(shrink(one.degrees) * part(one)), 0);
  const above = terms.reduce((sum, one) => sum + square(stretch(one.degrees) * part(one)), 0);
  return { low: Math.max(0, whole - Math.sqrt(below)), high: whole + Math.sqrt(above) };
}

/**
 * Interval of (one - other) / divisor of two mean squares: Ting, Burdick, Graybill, Jeyaratnam and Lu 1990 (Journal of
 * Statistical Computation and Simulation 35, 135-143). Below nought it ends at nought.
 */
export function differenceBounds(one: Term, other: Term, divisor: number): Bounds {
  const [g1, h1, g2, h2] = [
    shrink(one.degrees),
    stretch(one.degrees),
    shrink(other.degrees),
    stretch(other.degrees),
  ];
  const fHigh = fQuantile(UPPER, one.degrees, other.degrees);
  const fLow = fQuantile(LOWER, one.degrees, other.degrees);
  const g12 = (square(fHigh - 1) - square(g1 * fHigh) - square(h2)) / fHigh;
  const h12 = (square(1 - fLow) - square(h1 * fLow) - square(g2)) / fLow;
  const [a, b] = [one.meanSquare, other.meanSquare];
  const below = square(g1 * a) + square(h2 * b) + g12 * a * b;
  const above = square(h1 * a) + square(g2 * b) + h12 * a * b;
  const bound = (value: number): number => Math.max(0, value / divisor);
  return {
    low: bound(a - b - Math.sqrt(Math.max(0, below))),
    high: bound(a - b + Math.sqrt(Math.max(0, above))),
  };
}
