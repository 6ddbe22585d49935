import { betaIncomplete } from "./beta-incomplete";

/**
 * The x in [0, 1] with I_x(a, b) = p, for p in [0, 1], a and b above 0; NaN outside. Bisection: the distribution
 * function rises monotonically, and halving until two neighbouring doubles are left needs no start value and no
 * derivative.
 */
export function betaQuantile(p: number, a: number, b: number): number {
  if (!(p >= 0 && p <= 1 && a > 0 && b > 0)) return NaN;
  if (p === 0 || p === 1) return p;
  let low = 0;
  let high = 1;
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (betaIncomplete(middle, a, b) < p) low = middle;
    else high = middle;
  }
}
