import { binaryEntropyBits } from "@/lib/numeric";
import type { Solver } from "./infer";
import type { Evidence, Network, Posterior } from "./types";

export interface Tells {
  /** P(sign is there | evidence). */
  readonly yes: number;
  /** Expected drop of the joint entropy over all variables by looking for the sign, bits. */
  readonly bits: number;
}

/**
 * (1 - x)·ln(1 - x) as a sum of powers of x, for 0 <= x <= 0.98: so far a sign can be silent with a leak of 0.02.
 * Least-squares coefficients worked out here. A test holds the sum to 3e-4 bits over the interval, which is then the
 * largest error of `information`; for smaller leaks than 0.02 that stays below 0.01.
 */
export const powers = [1, 2, 4, 8, 16, 32] as const;
export const coefficients = [-1.005749, 0.555837, 0.271161, 0.089411, 0.036981, 0.039021];

/**
 * What a sign not looked for yet would tell: the mutual information of the sign and all variables together,
 * I = H(sign) - E[H(sign | states)]. With x = P(silent | states), E[x^k] is the chance of k independent silent copies of
 * the sign (an inference each), and E[x·ln x] is linear in the posterior given one. Exact but for the sum of powers.
 */
export function information(
  network: Network,
  evidence: Evidence,
  { solve, logEvidence }: Solver,
  before: Posterior,
  sign: number,
): Tells {
  const { leak } = network.signs[sign]!;
  const silences = silencesOf(network, sign);
  const silent = (k: number): Evidence => ({
    ...evidence,
    virtual: [
      ...evidence.virtual,
      ...silences.map(({ variable, likelihood }) => ({
        variable,
        likelihood: likelihood.map((s) => s ** k),
      })),
    ],
  });
  const without = solve(silent(1));
  const no = Math.exp(without.logEvidence - before.logEvidence) * (1 - leak);
  const meanLog = silences.reduce(
    (sum, { variable, likelihood }) =>
      sum + likelihood.reduce((s, l, state) => s + timesLog(without.marginals[variable]![state]!, l), 0),
    Math.log(1 - leak),
  );
  const moments = powers.map((k) =>
    k === 1 ? no : Math.exp(logEvidence(silent(k)) - before.logEvidence) * (1 - leak) ** k,
  );
  const other = moments.reduce((sum, m, i) => sum + coefficients[i]! * m, 0);
  return {
    yes: 1 - no,
    bits: Math.max(0, binaryEntropyBits(no) + (no * meanLog + other) / Math.LN2),
  };
}

/** p·ln(l), 0 where p is. */
const timesLog = (p: number, l: number): number => (p === 0 ? 0 : p * Math.log(l));

/**
 * The same from the marginals alone, in no time: the information about the one variable the sign tells most about, the
 * variables taken as independent given the evidence. A lower bound of the joint information where they are.
 */
export function roughInformation(network: Network, before: Posterior, sign: number): Tells {
  const silences = silencesOf(network, sign);
  const mean = silences.map(({ variable, likelihood }) =>
    likelihood.reduce((sum, s, state) => sum + s * before.marginals[variable]![state]!, 0),
  );
  const no = mean.reduce((product, m) => product * m, 1 - network.signs[sign]!.leak);
  const bits = silences.map(({ variable, likelihood }, i) => {
    const others = no / mean[i]!;
    const blurred = likelihood.reduce(
      (sum, s, state) => sum + before.marginals[variable]![state]! * binaryEntropyBits(s * others),
      0,
    );
    return binaryEntropyBits(no) - blurred;
  });
  return { yes: 1 - no, bits: Math.max(0, ...bits) };
}

/** P(this variable leaves the sign silent | state), for the variables that can make it. */
function silencesOf(network: Network, sign: number) {
  const rows = new Map<number, number[]>();
  for (const { variable, state, q } of network.signs[sign]!.links) {
    const row = rows.get(variable) ?? network.variables[variable]!.prior.map(() => 1);
    row[state]! *= 1 - q;
    rows.set(variable, row);
  }
  return [...rows].map(([variable, likelihood]) => ({ variable, likelihood }));
}
