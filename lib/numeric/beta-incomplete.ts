import { logGamma } from "./log-gamma";

const MOST_STEPS = 10_000;
/** Keeps a denominator of the fraction off zero, as Lentz's method asks (Thompson and Barnett 1986). */
const TINY = 1e-300;
const awayFromZero = (x: number): number => (Math.abs(x) < TINY ? TINY : x);

/** DLMF 8.17.22, the fraction 1/(1 + d1/(1 + d2/...)), by the modified method of Lentz. */
function continuedFraction(x: number, a: number, b: number): number {
  let c = 1;
  let d = 1 / awayFromZero(1 - ((a + b) * x) / (a + 1));
  let value = d;
  for (let m = 1; m <= MOST_STEPS; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    let step = 1;
    for (const coefficient of [even, odd]) {
      d = 1 / awayFromZero(1 + coefficient * d);
      c = awayFromZero(1 + coefficient / c);
      step = d * c;
      value *= step;
    }
    if (Math.abs(step - 1) < 1e-16) break;
  }
  return value;
}

/**
 * Regularised incomplete beta function I_x(a, b), the distribution function of the beta distribution, x in [0, 1],
 * a and b above 0; NaN outside. DLMF 8.17.
 */
export function betaIncomplete(x: number, a: number, b: number): number {
  if (!(x >= 0 && x <= 1 && a > 0 && b > 0)) return NaN;
  if (x === 0 || x === 1) return x;
  // The fraction converges fast below the mean; the other side comes from I_x(a, b) = 1 - I_(1-x)(b, a).
  if (x > (a + 1) / (a + b + 2)) return 1 - betaIncomplete(1 - x, b, a);
  const logFront = a * Math.log(x) + b * Math.log1p(-x) + logGamma(a + b) - logGamma(a) - logGamma(b);
  return (Math.exp(logFront) * continuedFraction(x, a, b)) / a;
}
