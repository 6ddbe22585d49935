/** Natural log-odds of p: -Infinity at 0, Infinity at 1, NaN outside [0, 1]. */
export function logOdds(p: number): number {
  return Math.log(p) - Math.log1p(-p);
}
