import type { Evidence, Network, Posterior } from "@/lib/diagnose/network/types";
import { logSumExp } from "./log-sum-exp";

/** log P(states, evidence) of one full assignment, straight from the definition. */
export function logJoint(network: Network, evidence: Evidence, states: readonly number[]): number {
  let log = 0;
  network.variables.forEach(({ prior }, v) => (log += Math.log(prior[states[v]!]!)));
  for (const { variable, likelihood } of evidence.virtual) log += Math.log(likelihood[states[variable]!]!);
  const silence = (sign: number): number =>
    network.signs[sign]!.links.reduce(
      (p, { variable, state, q }) => (states[variable] === state ? p * (1 - q) : p),
      1 - network.signs[sign]!.leak,
    );
  for (const sign of new Set(evidence.present)) log += Math.log(1 - silence(sign));
  for (const sign of new Set(evidence.absent)) log += Math.log(silence(sign));
  return log;
}

/** Every assignment of states, first variable slowest. */
export function assignmentsOf(network: Network): readonly (readonly number[])[] {
  return network.variables.reduce<readonly (readonly number[])[]>(
    (list, { prior }) => list.flatMap((states) => prior.map((_, state) => [...states, state])),
    [[]],
  );
}

/** The posterior by summing over all assignments: the yardstick, for small networks only. */
export function enumeratePosterior(network: Network, evidence: Evidence): Posterior {
  const all = assignmentsOf(network).map((states) => ({ states, log: logJoint(network, evidence, states) }));
  const logEvidence = logSumExp(all.map(({ log }) => log));
  const marginals = network.variables.map(({ prior }, v) =>
    prior.map((_, state) =>
      Math.exp(
        logSumExp(all.filter(({ states }) => states[v] === state).map(({ log }) => log)) - logEvidence,
      ),
    ),
  );
  return { logEvidence, marginals };
}
