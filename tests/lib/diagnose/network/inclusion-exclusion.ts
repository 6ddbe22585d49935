import { structureOf, weightsOf } from "@/lib/diagnose/network/problem";
import type { Evidence, Network, Posterior } from "@/lib/diagnose/network/types";

/**
 * The textbook sum over subsets of present findings with alternating signs (Heckerman, 1989): the baseline of the
 * benchmark. It doubles with each finding and cancels: use it for small numbers of findings only.
 */
export function inclusionExclusion(network: Network, evidence: Evidence): Posterior {
  const { sparks, leaks } = structureOf(network, evidence.present);
  const { rows, logScale } = weightsOf(network, evidence);
  const marginals = rows.map((row) => row.map(() => 0));
  let total = 0;
  for (let subset = 0; subset < 2 ** leaks.length; subset++) {
    const silent = rows.map((row, v) =>
      row.map((weight, s) =>
        sparks[v]![s]!.reduce((p, { sign, q }) => ((subset >> sign) & 1 ? p * (1 - q) : p), weight),
      ),
    );
    const sums = silent.map((row) => row.reduce((a, b) => a + b, 0));
    const sign = leaks.reduce((p, leak, i) => ((subset >> i) & 1 ? -p * (1 - leak) : p), 1);
    const term = sign * sums.reduce((a, b) => a * b, 1);
    total += term;
    silent.forEach((row, v) => row.forEach((p, s) => (marginals[v]![s]! += (term * p) / sums[v]!)));
  }
  return {
    logEvidence: logScale + Math.log(total),
    marginals: marginals.map((row) => row.map((p) => p / total)),
  };
}
