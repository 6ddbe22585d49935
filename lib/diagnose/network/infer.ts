import { planFor } from "./plan";
import { structureOf, weightsOf, type Structure } from "./problem";
import { sweepOver } from "./sweep";
import type { Evidence, Network, Posterior } from "./types";

/** Inference for one set of present signs; readings, answers and absent signs may change from call to call. */
export type Solver = (evidence: Omit<Evidence, "present">) => Posterior;

/**
 * Exact posterior of every state of every variable. Algorithm: a sum over which present signs are explained, taken
 * variable by variable with signs opened and closed on the way (plan.ts), summed outside over the states of the few
 * variables that touch most signs. All terms are positive, so there is no cancellation; 20 present signs over the full
 * tables stay within milliseconds. Impossible evidence gives logEvidence -Infinity and NaN marginals.
 * At most 30 present signs (bit masks); the vocabulary has about that many.
 */
export function infer(network: Network, evidence: Evidence): Posterior {
  return solverFor(network, evidence.present)(evidence);
}

/** Keeps the plan for one set of present signs, for the many runs that leave out one other piece of evidence each. */
export function solverFor(network: Network, present: readonly number[]): Solver {
  const structure = structureOf(network, present);
  const plan = planFor(structure);
  const sweep = sweepOver(plan, structure);
  return (evidence) => {
    const { rows, logScale } = weightsOf(network, { ...evidence, present });
    const marginals = rows.map((row) => row.map(() => 0));
    let total = 0;
    for (const { states, weight } of assignments(plan.hubs, rows)) {
      const added = sweep(rows, leaksUnder(structure, plan.hubs, states), weight, marginals);
      plan.hubs.forEach((hub, i) => (marginals[hub]![states[i]!]! += added));
      total += added;
    }
    const touched = new Set(plan.steps.flatMap((step) => (step.kind === "variable" ? [step.variable] : [])));
    for (const hub of plan.hubs) touched.add(hub);
    return {
      logEvidence: logScale + Math.log(total),
      marginals: marginals.map((row, v) => (touched.has(v) ? row.map((p) => p / total) : rows[v]!)),
    };
  };
}

interface Assignment {
  readonly states: readonly number[];
  readonly weight: number;
}

function assignments(hubs: readonly number[], rows: readonly (readonly number[])[]): readonly Assignment[] {
  return hubs.reduce<readonly Assignment[]>(
    (list, hub) =>
      list.flatMap(({ states, weight }) =>
        rows[hub]!.map((w, state) => ({ states: [...states, state], weight: weight * w })),
      ),
    [{ states: [], weight: 1 }],
  );
}

/** With the hubs' states given, what they can make is as good as a larger leak. */
function leaksUnder(
  structure: Structure,
  hubs: readonly number[],
  states: readonly number[],
): readonly number[] {
  const silent = structure.leaks.map((leak) => 1 - leak);
  hubs.forEach((hub, i) => {
    for (const { sign, q } of structure.sparks[hub]![states[i]!]!) silent[sign]! *= 1 - q;
  });
  return silent.map((s) => 1 - s);
}
