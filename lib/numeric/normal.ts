/** Density of the standard normal distribution. */
export function normalDensity(x: number): number {
  return Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);
}

/** Beyond this the series would cancel; the fraction of the tail is used instead. */
const TAIL = 5;

/**
 * Distribution function of the standard normal distribution, to about 1e-15. Inside by the series of Marsaglia (Journal of
 * Statistical Software 11, 2004), in the tails by the continued fraction of Abramowitz and Stegun 26.2.14.
 */
export function normalShare(x: number): number {
  if (Number.isNaN(x)) return NaN;
  if (x > TAIL) return 1 - normalShare(-x);
  if (x < -TAIL) return normalDensity(x) / fraction(-x);
  let [sum, term, before] = [x, x, NaN];
  for (let i = 3; sum !== before; i += 2) {
    before = sum;
    term *= (x * x) / i;
    sum += term;
  }
  return 0.5 + sum * normalDensity(x);
}

function fraction(x: number): number {
  let value = x;
  for (let i = 60; i > 0; i -= 1) value = x + i / value;
  return value;
}

/** The x with `normalShare(x)` = p for p in [0, 1]; NaN outside. By halving. */
export function normalQuantile(p: number): number {
  if (!(p >= 0 && p <= 1)) return NaN;
  if (p === 0 || p === 1) return p === 0 ? -Infinity : Infinity;
  let [low, high] = [-40, 40];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (normalShare(middle) < p) low = middle;
    else high = middle;
  }
}
