import { erf } from "@/lib/numeric";
/** A list of values of which the least is wanted, each with the standard deviation of its own pick. */
export interface Candidates {
  readonly values: readonly number[];
  readonly sigmas: readonly number[];
}

/** Steps of the integral; beyond eight deviations nothing is left. */
const STEPS = 96;

/**
 * By how much the least of several picked values comes out too small: the expected least of normals about the values,
 * less the least of the values (never positive). Of ten equal values it is 1.54 deviations (Tippett 1925), of one that
 * stands clear of the rest it is nought. What comes out is taken off again, because a figure such as a throat is the least
 * over the whole face, and every pick gets its chance to be the least.
 *
 * E[least] = m + integral of S above m - integral of 1 - S below m, with S(x) the product of the chances to lie above x.
 */
export function leastShift({ values, sigmas }: Candidates): number {
  const widest = Math.max(...sigmas);
  if (values.length < 2 || !(widest > 0)) return 0;
  const least = Math.min(...values);
  const step = (16 * widest) / STEPS;
  let shift = 0;
  for (let i = 0; i < STEPS; i++) {
    const x = (i + 0.5) * step - 8 * widest;
    const above = values.reduce(
      (product, value, k) => product * chanceAbove(x, value - least, sigmas[k]!),
      1,
    );
    shift += (x > 0 ? above : above - 1) * step;
  }
  return Math.min(0, shift);
}

function chanceAbove(x: number, middle: number, sigma: number): number {
  if (sigma === 0) return x < middle ? 1 : 0;
  const z = (middle - x) / sigma;
  return z > 8 ? 1 : z < -8 ? 0 : (1 + erf(z / Math.SQRT2)) / 2;
}
