import type { Structure } from "./problem";

/**
 * The order in which the sum over all states is taken. A vector over "which of the open signs are already explained" is
 * carried along: a sign is opened before the first variable that can make it and closed (must be explained by then, or
 * by its leak) after the last, so the vector has 2^(open signs) entries, not 2^(present signs).
 * `hubs` are variables that touch so many signs that summing over their states outside is cheaper than keeping the
 * signs open.
 */
export interface Plan {
  readonly hubs: readonly number[];
  readonly steps: readonly Step[];
  /** Multiply-adds of one evaluation, roughly. */
  readonly cost: number;
}

export type Step =
  | { readonly kind: "open" }
  | { readonly kind: "variable"; readonly variable: number; readonly bits: readonly number[] }
  | { readonly kind: "close"; readonly sign: number; readonly bit: number };

/** Below this many multiply-adds a search for hubs costs more than it saves. */
const CHEAP = 60_000;
/** Of the variables that touch most signs, how many are tried as the next hub. */
const TRIED = 4;
const MOST_HUBS = 6;

export function planFor(structure: Structure): Plan {
  const reach = structure.sparks.map((states) =>
    states.reduce((mask, sparks) => sparks.reduce((m, { sign }) => m | (1 << sign), mask), 0),
  );
  let best = planWithout(structure, reach, []);
  if (best.cost <= CHEAP) return best;
  // One hub alone seldom pays while another keeps the same signs open, so the search goes on past a dearer plan.
  let hubs: readonly number[] = [];
  for (let n = 0; n < MOST_HUBS; n++) {
    const next = reach
      .map((mask, variable) => ({ variable, size: popCount(mask) }))
      .filter(({ variable, size }) => size > 1 && !hubs.includes(variable))
      .sort((a, b) => b.size - a.size)
      .slice(0, TRIED)
      .map(({ variable }) => planWithout(structure, reach, [...hubs, variable]))
      .reduce<Plan | null>((a, b) => (a !== null && a.cost <= b.cost ? a : b), null);
    if (next === null) break;
    hubs = next.hubs;
    if (next.cost < best.cost) best = next;
  }
  return best;
}

/** A plan for given hubs: always closes next the sign that leaves the fewest open (greedy minimum width). */
function planWithout(structure: Structure, reach: readonly number[], hubs: readonly number[]): Plan {
  const waiting = new Set(reach.keys());
  for (const hub of hubs) waiting.delete(hub);
  for (const [variable, mask] of reach.entries()) if (mask === 0) waiting.delete(variable);
  const steps: Step[] = [];
  const open: number[] = [];
  let left = (1 << structure.leaks.length) - 1;
  let cost = 0;
  while (left !== 0) {
    const { makers, wanted } = cheapestSign(left, open, waiting, reach);
    for (const sign of bitsOf(wanted)) {
      if (open.includes(sign)) continue;
      open.push(sign);
      steps.push({ kind: "open" });
    }
    for (const variable of makers) {
      const bits = structure.leaks.map((_, sign) => 1 << open.indexOf(sign));
      steps.push({ kind: "variable", variable, bits });
      cost += structure.sparks[variable]!.reduce((n, sparks) => n + 1 + sparks.length, 0) * 2 ** open.length;
      waiting.delete(variable);
    }
    for (const sign of [...open]) {
      if ([...waiting].some((variable) => (reach[variable]! & (1 << sign)) !== 0)) continue;
      steps.push({ kind: "close", sign, bit: open.indexOf(sign) });
      cost += 2 ** open.length;
      open.splice(open.indexOf(sign), 1);
      left &= ~(1 << sign);
    }
  }
  const turns = hubs.reduce((n, hub) => n * structure.sparks[hub]!.length, 1);
  return { hubs, steps, cost: 2 * turns * (cost + steps.length * 10) };
}

function cheapestSign(
  left: number,
  open: readonly number[],
  waiting: ReadonlySet<number>,
  reach: readonly number[],
) {
  const openMask = open.reduce((mask, sign) => mask | (1 << sign), 0);
  let best: { makers: number[]; wanted: number; width: number } | null = null;
  for (const sign of bitsOf(left)) {
    const makers = [...waiting].filter((variable) => (reach[variable]! & (1 << sign)) !== 0);
    const wanted = makers.reduce((mask, variable) => mask | reach[variable]!, 1 << sign);
    const width = popCount(wanted | openMask);
    if (best === null || width < best.width) best = { makers, wanted, width };
  }
  return best!;
}

function bitsOf(mask: number): readonly number[] {
  const bits: number[] = [];
  for (let bit = 0; mask >> bit !== 0; bit++) if ((mask >> bit) & 1) bits.push(bit);
  return bits;
}

function popCount(mask: number): number {
  return bitsOf(mask).length;
}
