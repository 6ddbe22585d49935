import { betaQuantile } from "./beta-quantile";

/**
 * The t with P(|T| <= t) = `confidence` for Student's distribution with `df` > 0 degrees of freedom; NaN where there is none.
 * By the beta distribution: df / (df + T²) is Beta(df/2, 1/2) (Abramowitz and Stegun 26.7.1; from memory).
 */
export function tQuantile(confidence: number, df: number): number {
  if (!(confidence > 0 && confidence < 1 && df > 0)) return NaN;
  const x = betaQuantile(1 - confidence, df / 2, 0.5);
  return Math.sqrt((df * (1 - x)) / x);
}
