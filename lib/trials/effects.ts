import { studentQuantile } from "@/lib/numeric";
import { leastSquares } from "./least-squares";
import { pureError } from "./scatter";

/** What turning the knobs `of` (counted from 0) from the low to the high end does; two or more: their interaction. */
export interface Effect {
  readonly of: readonly number[];
  readonly value: number;
  /** Between these with 95 %; null where no run was repeated and nothing is left over to know the scatter by. */
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * Effects of a two-level design, coded -1 and 1, by least squares: twice the coefficient, all interactions among them.
 * `error`: scatter as repeats show it; those of these runs where it is left out. null where the runs do not tell them apart. NIST/SEMATECH e-Handbook 5.4.7.1.
 */
export function effects(
  points: readonly (readonly number[])[],
  y: readonly number[],
  error = pureError(points.map((at, i) => ({ at, value: y[i]! }))),
): { readonly mean: number; readonly effects: readonly Effect[] } | null {
  const sets = subsets(points[0]?.length ?? 0).filter(({ length }) => length >= 1);
  const rows = points.map((point) => [
    1,
    ...sets.map((of) => of.reduce((product, i) => product * point[i]!, 1)),
  ]);
  const fit = leastSquares(rows, y);
  if (fit === null) return null;
  const spread = error.degrees > 0 ? error : { sum: fit.residualSum, degrees: fit.degrees };
  const s = Math.sqrt(spread.sum / spread.degrees);
  const t = studentQuantile(0.975, spread.degrees);
  return {
    mean: fit.coefficients[0]!,
    effects: sets.map((of, i) => {
      const value = 2 * fit.coefficients[i + 1]!;
      const unit = rows[0]!.map((_, j) => (j === i + 1 ? 1 : 0));
      const half = 2 * t * s * Math.sqrt(fit.leverage(unit));
      const known = Number.isFinite(half);
      return { of, value, low: known ? value - half : null, high: known ? value + half : null };
    }),
  };
}

/** All sets of 0 … n-1 in Yates order: the first alone, the second alone, both, the third … */
const subsets = (n: number): readonly (readonly number[])[] =>
  Array.from({ length: 2 ** n }, (_, bits) =>
    Array.from({ length: n }, (_, i) => i).filter((i) => (bits >> i) & 1),
  );
