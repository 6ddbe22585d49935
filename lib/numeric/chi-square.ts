import { logGamma } from "./log-gamma";

/** Terms are added until they no longer count; what does not end by then is none of ours. */
const MOST_TERMS = 10_000;
const TINY = 1e-300;

/** Share of the chi-square distribution below x, for x of at least 0 and degrees above 0; NaN outside. DLMF 8.7, 8.9. */
export function chiSquareShare(x: number, degrees: number): number {
  if (!(x >= 0 && degrees > 0)) return NaN;
  if (x === 0) return 0;
  const [a, half] = [degrees / 2, x / 2];
  const front = Math.exp(a * Math.log(half) - half - logGamma(a));
  return half < a + 1 ? front * series(a, half) : 1 - front * fraction(a, half);
}

/** Of the lower incomplete gamma function: converges quickly below the mean. */
function series(a: number, x: number): number {
  let [term, sum] = [1 / a, 1 / a];
  for (let n = 1; n < MOST_TERMS && term > sum * Number.EPSILON; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** Of the upper one, by the modified method of Lentz: converges quickly above the mean. */
function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let [c, d] = [1 / TINY, 1 / b];
  let all = d;
  for (let n = 1; n < MOST_TERMS; n++) {
    const over = -n * (n - a);
    b += 2;
    d = 1 / (over * d + b || TINY);
    c = b + over / c || TINY;
    all *= d * c;
    if (Math.abs(d * c - 1) < Number.EPSILON) break;
  }
  return all;
}

/** The x with share p of the chi-square distribution below it, for p in (0, 1) and degrees above 0; NaN outside. */
export function chiSquareQuantile(p: number, degrees: number): number {
  if (!(p > 0 && p < 1 && degrees > 0)) return NaN;
  let [low, high] = [0, degrees + 1];
  while (chiSquareShare(high, degrees) < p) high *= 2;
  // Halving until two neighbouring doubles are left needs no start value and no derivative.
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (chiSquareShare(middle, degrees) < p) low = middle;
    else high = middle;
  }
}
