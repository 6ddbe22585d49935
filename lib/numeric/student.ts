import { betaIncomplete } from "./beta-incomplete";
import { betaQuantile } from "./beta-quantile";
import { normalQuantile } from "./normal";

/** The t with share p below it, for p in (0, 1) and degrees of freedom above 0; Infinity degrees: the normal quantile. */
export function studentQuantile(p: number, degrees: number): number {
  if (!(p > 0 && p < 1 && degrees > 0)) return NaN;
  if (degrees === Infinity) return normalQuantile(p);
  if (p > 0.5) return -studentQuantile(1 - p, degrees);
  // t² / (t² + degrees) follows a beta distribution (DLMF 8.17, Abramowitz and Stegun 26.7.1).
  const x = betaQuantile(2 * p, degrees / 2, 0.5);
  return -Math.sqrt((degrees * (1 - x)) / x);
}

/** Share of the F distribution above f, for f of at least 0 and degrees of freedom above 0. Abramowitz and Stegun 26.6.2. */
export function fShareAbove(f: number, above: number, below: number): number {
  if (!(f >= 0 && above > 0 && below > 0)) return NaN;
  return betaIncomplete(below / (below + above * f), below / 2, above / 2);
}

/** The f with share p of the F distribution below it, for p in (0, 1). Abramowitz and Stegun 26.6.2. */
export function fQuantile(p: number, above: number, below: number): number {
  if (!(p > 0 && p < 1 && above > 0 && below > 0)) return NaN;
  const x = betaQuantile(p, above / 2, below / 2);
  return (below * x) / (above * (1 - x));
}
