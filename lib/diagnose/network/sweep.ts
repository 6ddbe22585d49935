import type { Moves, Plan, Step } from "./plan";
import { double, halveFrom, pullAllFrom, pushAllFrom, spread } from "./vector";

/** Where one evaluation of the plan leaves what it finds. */
export interface Tally {
  /** Added to, per variable and state, for the variables of the plan's steps. */
  readonly marginals: number[][];
  /** Set anew, per present sign: the part of the sum in which a variable of the steps explains it ... */
  readonly explained: Float64Array;
  /** ... and the weight of all the rest, before the leak is multiplied in: sum = explained + leak · unexplained. */
  readonly unexplained: Float64Array;
}

/** The sum alone takes the forward pass only, and leaves the tally as it is. */
export type Depth = "sum" | "marginals";

/** Evaluates the plan for given weights of states and silence (1 - leak) of signs, times `scale`; returns the sum. */
export type Sweep = (
  weights: readonly (readonly number[])[],
  silent: readonly number[],
  scale: number,
  depth: Depth,
  tally: Tally,
) => number;

/**
 * One pass forward and one backward over the plan. Every number added is positive, so nothing cancels: the relative
 * error stays near the machine's, whatever the number of signs (unlike inclusion-exclusion with its alternating signs).
 */
export function sweepOver({ steps }: Plan): Sweep {
  const sizes = sizesOf(steps);
  const alphas = sizes.map((size) => new Float64Array(size));
  const largest = Math.max(...sizes);
  const beta = new Float64Array(largest);
  const branch = new Float64Array(largest);
  const sum = new Float64Array(largest);
  return (weights, silent, scale, depth, tally) => {
    alphas[0]![0] = scale;
    for (let i = 0; i < steps.length; i++)
      forward(steps[i]!, alphas[i]!, alphas[i + 1]!, branch, weights, silent);
    const total = alphas[steps.length]![0]!;
    if (depth === "sum") return total;
    beta[0] = 1;
    for (let i = steps.length - 1; i >= 0; i--) {
      const step = steps[i]!;
      const alpha = alphas[i]!;
      if (step.kind === "close") unclose(step, alpha, beta, branch, silent, tally);
      if (step.kind === "variable") {
        const row = tally.marginals[step.variable]!;
        back(step.moves, weights[step.variable]!, alpha, sizes[i + 1]!, beta, branch, sum, row);
      }
      // Before an opening, beta is simply its own lower half.
    }
    return total;
  };
}

function sizesOf(steps: readonly Step[]): readonly number[] {
  const sizes = [1];
  for (const step of steps) {
    const last = sizes[sizes.length - 1]!;
    if (step.kind === "open") sizes.push(last * 2);
    else if (step.kind === "close") sizes.push(last / 2);
    else sizes.push(last * 2 ** step.moves[0]!.doublings.length);
  }
  return sizes;
}

function forward(
  step: Step,
  from: Float64Array,
  to: Float64Array,
  branch: Float64Array,
  weights: readonly (readonly number[])[],
  silent: readonly number[],
): void {
  if (step.kind === "open") {
    to.fill(0);
    to.set(from);
  } else if (step.kind === "close") {
    const leak = 1 - silent[step.sign]!;
    const up = 1 << step.bit;
    for (let mask = 0; mask < to.length; mask++) {
      const at = spread(mask, step.bit);
      to[mask] = from[at + up]! + leak * from[at]!;
    }
  } else {
    const row = weights[step.variable]!;
    const inOrder = row[0]!;
    let begun = false;
    for (let state = 1; state < row.length; state++) {
      if (row[state] === 0) continue;
      const wide = made(step.moves[state]!, row[state]!, from, branch);
      if (begun) addTo(to, branch, wide);
      else blend(to, inOrder, from, branch, wide);
      begun = true;
    }
    if (!begun) blend(to, inOrder, from, branch, 0);
  }
}

/** What one state makes of the vector, in `branch`; returns how long it has become. */
function made(
  { pushes, doublings }: Moves,
  weight: number,
  from: Float64Array,
  branch: Float64Array,
): number {
  let size = from.length;
  pushAllFrom(from, weight, branch, size, pushes);
  for (const q of doublings) {
    double(branch, size, q);
    size *= 2;
  }
  return size;
}

/** `to` = factor · from + branch, each as long as it is. */
function blend(
  to: Float64Array,
  factor: number,
  from: Float64Array,
  branch: Float64Array,
  wide: number,
): void {
  const size = from.length;
  if (wide === 0) {
    for (let mask = 0; mask < size; mask++) to[mask] = factor * from[mask]!;
    to.fill(0, size);
    return;
  }
  for (let mask = 0; mask < size; mask++) to[mask] = factor * from[mask]! + branch[mask]!;
  for (let mask = size; mask < wide; mask++) to[mask] = branch[mask]!;
}

function addTo(to: Float64Array, branch: Float64Array, wide: number): void {
  for (let mask = 0; mask < wide; mask++) to[mask] = to[mask]! + branch[mask]!;
}

/** The transpose of a variable's step, on beta in place; its marginals are read off on the way. */
function back(
  moves: readonly Moves[],
  weights: readonly number[],
  alpha: Float64Array,
  wide: number,
  beta: Float64Array,
  branch: Float64Array,
  sum: Float64Array,
  marginals: number[],
): void {
  const size = alpha.length;
  const inOrder = weights[0]!;
  let dot = 0;
  for (let mask = 0; mask < size; mask++) dot += alpha[mask]! * beta[mask]!;
  marginals[0]! += inOrder * dot;
  let last = weights.length - 1;
  while (last > 0 && weights[last] === 0) last--;
  let base = beta;
  let factor = inOrder;
  for (let state = 1; state <= last; state++) {
    const weight = weights[state]!;
    if (weight === 0) continue;
    unmade(moves[state]!, beta, wide, branch, size);
    const to = state === last ? beta : sum;
    let met = 0;
    for (let mask = 0; mask < size; mask++) {
      const later = branch[mask]!;
      met += alpha[mask]! * later;
      to[mask] = factor * base[mask]! + weight * later;
    }
    marginals[state]! += weight * met;
    base = sum;
    factor = 1;
  }
  if (last === 0) for (let mask = 0; mask < size; mask++) beta[mask] = inOrder * beta[mask]!;
}

/** The transpose of `made`, from beta into `branch`. */
function unmade(
  { pushes, doublings }: Moves,
  beta: Float64Array,
  wide: number,
  branch: Float64Array,
  size: number,
): void {
  let now = wide;
  let from = beta;
  for (let i = doublings.length - 1; i >= 0; i--) {
    now /= 2;
    halveFrom(from, branch, now, doublings[i]!);
    from = branch;
  }
  pullAllFrom(from, branch, size, pushes);
}

/** The transpose of closing a sign, on beta in place; both parts of the total are read off on the way. */
function unclose(
  { sign, bit }: { readonly sign: number; readonly bit: number },
  alpha: Float64Array,
  beta: Float64Array,
  scratch: Float64Array,
  silent: readonly number[],
  tally: Tally,
): void {
  const leak = 1 - silent[sign]!;
  const up = 1 << bit;
  let explained = 0;
  let unexplained = 0;
  for (let mask = 0; mask < alpha.length / 2; mask++) {
    const at = spread(mask, bit);
    const later = beta[mask]!;
    explained += alpha[at + up]! * later;
    unexplained += alpha[at]! * later;
    scratch[at + up] = later;
    scratch[at] = leak * later;
  }
  tally.explained[sign] = explained;
  tally.unexplained[sign] = unexplained;
  for (let mask = 0; mask < alpha.length; mask++) beta[mask] = scratch[mask]!;
}
