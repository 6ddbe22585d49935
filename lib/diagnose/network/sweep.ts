import type { Plan, Step } from "./plan";
import type { Spark, Structure } from "./problem";

/** Adds to the marginals what one assignment of the hubs contributes; returns the probability it contributes. */
export interface Sweep {
  (
    weights: readonly (readonly number[])[],
    leaks: readonly number[],
    scale: number,
    marginals: number[][],
  ): number;
}

/**
 * One pass forward and one backward over the plan. Every number added is positive, so nothing cancels: the relative
 * error stays near the machine's, whatever the number of signs (unlike inclusion-exclusion with its alternating signs).
 */
export function sweepOver(plan: Plan, structure: Structure): Sweep {
  const { steps } = plan;
  const widths = widthsOf(steps);
  const alphas = widths.map((width) => new Float64Array(2 ** width));
  const largest = 2 ** Math.max(0, ...widths);
  const beta = new Float64Array(largest);
  const branch = new Float64Array(largest);
  const sum = new Float64Array(largest);
  return (weights, leaks, scale, marginals) => {
    alphas[0]![0] = 1;
    steps.forEach((step, i) => forward(step, alphas[i]!, alphas[i + 1]!, branch, structure, weights, leaks));
    const total = alphas[steps.length]![0]!;
    beta[0] = 1;
    for (let i = steps.length - 1; i >= 0; i--) {
      const step = steps[i]!;
      const size = alphas[i]!.length;
      if (step.kind === "close") unclose(beta, branch, size, step.bit, leaks[step.sign]!);
      if (step.kind !== "variable") continue; // before an opening, beta is simply its own lower half
      sum.fill(0, 0, size);
      structure.sparks[step.variable]!.forEach((sparks, state) => {
        const weight = weights[step.variable]![state]!;
        branch.set(beta.subarray(0, size));
        for (const spark of sparks) pull(branch, size, step.bits[spark.sign]!, spark.q);
        let dot = 0;
        for (let mask = 0; mask < size; mask++) {
          sum[mask]! += weight * branch[mask]!;
          dot += alphas[i]![mask]! * branch[mask]!;
        }
        marginals[step.variable]![state]! += scale * weight * dot;
      });
      beta.set(sum.subarray(0, size));
    }
    return total * scale;
  };
}

function widthsOf(steps: readonly Step[]): readonly number[] {
  const widths = [0];
  for (const { kind } of steps) {
    const last = widths[widths.length - 1]!;
    widths.push(kind === "open" ? last + 1 : kind === "close" ? last - 1 : last);
  }
  return widths;
}

function forward(
  step: Step,
  from: Float64Array,
  to: Float64Array,
  branch: Float64Array,
  structure: Structure,
  weights: readonly (readonly number[])[],
  leaks: readonly number[],
): void {
  if (step.kind === "open") {
    to.fill(0);
    to.set(from);
  } else if (step.kind === "close") {
    for (let mask = 0; mask < to.length; mask++) {
      const at = spread(mask, step.bit);
      to[mask] = from[at | (1 << step.bit)]! + leaks[step.sign]! * from[at]!;
    }
  } else {
    to.fill(0);
    structure.sparks[step.variable]!.forEach((sparks: readonly Spark[], state) => {
      const weight = weights[step.variable]![state]!;
      branch.set(from);
      for (const spark of sparks) push(branch, from.length, step.bits[spark.sign]!, spark.q);
      for (let mask = 0; mask < from.length; mask++) to[mask]! += weight * branch[mask]!;
    });
  }
}

/** The mask with a 0 put in at `bit`. */
function spread(mask: number, bit: number): number {
  return ((mask >> bit) << (bit + 1)) | (mask & ((1 << bit) - 1));
}

/** With probability q the sign becomes explained. */
function push(vector: Float64Array, size: number, bit: number, q: number): void {
  for (let block = 0; block < size; block += 2 * bit) {
    for (let mask = block; mask < block + bit; mask++) {
      const unexplained = vector[mask]!;
      vector[mask + bit]! += q * unexplained;
      vector[mask] = (1 - q) * unexplained;
    }
  }
}

/** The transpose of `push`. */
function pull(vector: Float64Array, size: number, bit: number, q: number): void {
  for (let block = 0; block < size; block += 2 * bit) {
    for (let mask = block; mask < block + bit; mask++) {
      vector[mask] = (1 - q) * vector[mask]! + q * vector[mask + bit]!;
    }
  }
}

/** The transpose of closing a sign, in place by way of `scratch`. */
function unclose(beta: Float64Array, scratch: Float64Array, size: number, bit: number, leak: number): void {
  for (let mask = 0; mask < size / 2; mask++) {
    const at = spread(mask, bit);
    scratch[at | (1 << bit)] = beta[mask]!;
    scratch[at] = leak * beta[mask]!;
  }
  beta.set(scratch.subarray(0, size));
}
