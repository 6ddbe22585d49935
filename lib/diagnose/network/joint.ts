import type { Evidence, Network } from "./types";
import { structureOf, weightsOf } from "./problem";

export interface BestSet {
  /** Variables out of order, with their states; all others in order. */
  readonly out: readonly { readonly variable: number; readonly state: number }[];
  /** Natural log of the joint probability of exactly this assignment and the evidence. */
  readonly logJoint: number;
}

/**
 * The most probable assignment with at most `most` variables out of order, by going through all of them: for 50 causes
 * and three at most some 20 000 sets. Ties go to the first found, which is the smaller set.
 */
export function bestSet(network: Network, evidence: Evidence, most: number): BestSet {
  const { sparks, leaks } = structureOf(network, evidence.present);
  const { rows, logScale } = weightsOf(network, evidence);
  // Relative to everything in order: odds of each state, and what is left of each sign's silence.
  const options = rows.flatMap((row, variable) =>
    row.slice(1).map((weight, i) => ({
      variable,
      state: i + 1,
      odds: weight / row[0]!,
      sparks: sparks[variable]![i + 1]!,
    })),
  );
  const base = logScale + rows.reduce((sum, row) => sum + Math.log(row[0]!), 0);
  let best: { out: number[]; score: number } = { out: [], score: -1 };
  const visit = (from: number, out: number[], odds: number, silence: readonly number[]): void => {
    const score = silence.reduce((product, s) => product * (1 - s), odds);
    if (score > best.score) best = { out: [...out], score };
    if (out.length === most) return;
    for (let i = from; i < options.length; i++) {
      const option = options[i]!;
      // Without a spark or odds above 1 a further cause can only lower the score.
      if (option.odds <= 1 && option.sparks.length === 0) continue;
      if (out.some((other) => options[other]!.variable === option.variable)) continue;
      const next = silence.slice();
      for (const { sign, q } of option.sparks) next[sign]! *= 1 - q;
      visit(i + 1, [...out, i], odds * option.odds, next);
    }
  };
  visit(
    0,
    [],
    1,
    leaks.map((leak) => 1 - leak),
  );
  return {
    out: best.out.map((i) => ({ variable: options[i]!.variable, state: options[i]!.state })),
    logJoint: base + Math.log(best.score),
  };
}
