import type { BudgetPart } from "./types";

/**
 * Half-width of the interval that holds as much of the combined error as two standard deviations hold of a normal one
 * (95.45 %). Normal parts add in squares and give U = 2 u. A "near-side" part is +a or -a, each as likely: two standard
 * deviations would hold all of it and claim too little for the figure, so U is found from the mixture of the two
 * (JCGM 100:2008, G.1.4: the distribution decides k).
 */
export function expanded(budget: readonly BudgetPart[]): number {
  const a = Math.hypot(...budget.filter(({ part }) => part === "near-side").map(({ u }) => u));
  const s = Math.hypot(...budget.filter(({ part }) => part !== "near-side").map(({ u }) => u));
  if (a === 0 || s === 0) return a + 2 * s;
  let low = Math.max(a, 2 * s);
  let high = a + 2 * s;
  // Forty halvings leave less than a part in 1e12 of the bracket.
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    if (held(middle / s, a / s) < TWO_SIGMA) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Share of a unit normal displaced by `a` that lies within `u` of nought. */
function held(u: number, a: number): number {
  return (erf((u - a) / Math.SQRT2) + erf((u + a) / Math.SQRT2)) / 2;
}

/** Abramowitz and Stegun, Handbook of Mathematical Functions, 7.1.26: absolute error below 1.5e-7. */
function erf(x: number): number {
  const t = 1 / (1 + 0.3275911 * Math.abs(x));
  const tail =
    ((((1.061405429 * t - 1.453152027) * t + 1.421413741) * t - 0.284496736) * t + 0.254829592) *
    t *
    Math.exp(-x * x);
  return Math.sign(x) * (1 - tail);
}

const TWO_SIGMA = erf(Math.SQRT2);
