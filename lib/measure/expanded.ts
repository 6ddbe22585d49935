import { erf } from "@/lib/numeric";
import type { BudgetPart } from "./types";

/**
 * Half-width of the interval that holds as much of the combined error as two standard deviations hold of a normal one
 * (95.45 %). Normal parts add in squares and give U = 2 u. A part with odds has two values only; two standard deviations
 * are then too much or too little, and U is found from the mixture of the two (JCGM 100:2008, G.1.4: the distribution
 * decides k).
 */
export function expanded(budget: readonly BudgetPart[]): number {
  const s = Math.hypot(...budget.filter(({ odds }) => odds === undefined).map(({ u }) => u));
  const tosses = budget.filter(({ u, odds }) => u > 0 && odds !== undefined && odds > 0);
  if (tosses.length === 0) return 2 * s;
  const a = Math.hypot(...tosses.map(({ u }) => u));
  // Several at once are rare (two photos, two discs); the evenest of them stands for all.
  const odds = Math.max(...tosses.map((toss) => toss.odds ?? 0.5));
  const apart = a / Math.sqrt(odds * (1 - odds));
  const values = [
    { at: odds * apart, share: 1 - odds },
    { at: (odds - 1) * apart, share: odds },
  ];
  const held = (half: number): number =>
    values.reduce((sum, { at, share }) => sum + share * within(half, at, s), 0);
  let low = 0;
  let high = apart + 2 * s;
  // Fifty halvings leave less than a part in 1e14 of the bracket.
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (held(middle) < TWO_SIGMA) low = middle;
    else high = middle;
  }
  return high;
}

/** Share of a normal error of deviation `s` about `at` that lies within `half` of nought. */
function within(half: number, at: number, s: number): number {
  if (s === 0) return Math.abs(at) <= half ? 1 : 0;
  return (erf((half - at) / s / Math.SQRT2) + erf((half + at) / s / Math.SQRT2)) / 2;
}

const TWO_SIGMA = erf(Math.SQRT2);
