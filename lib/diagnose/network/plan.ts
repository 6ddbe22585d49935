import type { Spark, Structure } from "./problem";
import type { Push } from "./vector";

/**
 * The order in which the sum over all states is taken. A vector over "which of the open signs are already explained" is
 * carried along: a sign is opened by the first variable that can make it and closed (must be explained by then, or by
 * its leak) after the last, so the vector has 2^(open signs) entries, not 2^(present signs).
 */
export interface Plan {
  /** Variables that touch so many signs that summing over their states outside is cheaper than keeping signs open. */
  readonly hubs: readonly number[];
  /** Variables that touch one present sign only: they are part of its leak. */
  readonly lone: readonly { readonly variable: number; readonly sign: number }[];
  readonly steps: readonly Step[];
  /** Multiply-adds of one evaluation, roughly. */
  readonly cost: number;
}

export type Step =
  /** A sign that nothing but hubs and lone variables can make. */
  | { readonly kind: "open" }
  | {
      readonly kind: "variable";
      readonly variable: number;
      /** By state. */
      readonly moves: readonly Moves[];
    }
  | { readonly kind: "close"; readonly sign: number; readonly bit: number };

/** What a state does to the vector: pushes within it, lowest bits first, then doublings for the signs it opens (q 0: not this state). */
export interface Moves {
  readonly pushes: readonly Push[];
  readonly doublings: readonly number[];
}

/** Below this many multiply-adds a search for hubs costs more than it saves. */
const CHEAP = 60_000;
/** Of the variables that touch most signs, how many are tried as the next hub. */
const TRIED = 6;
const MOST_HUBS = 6;
/** Above this many multiply-adds, so many more orders are tried. */
const DEAR = 1_000_000;
const TWISTS = 30;
/** What a step costs besides its multiply-adds, in those. */
const STEP = 100;

export function planFor(structure: Structure): Plan {
  const board = boardOf(structure);
  let best: Order = orderWithout(board, []);
  // One hub alone seldom pays while another keeps the same signs open, so the search goes on past a dearer plan.
  let hubs: readonly number[] = [];
  for (let n = 0; n < MOST_HUBS && best.cost > CHEAP; n++) {
    const next = board.wide
      .filter((variable) => !hubs.includes(variable))
      .slice(0, TRIED)
      .map((variable) => orderWithout(board, [...hubs, variable]))
      .reduce<Order | null>((a, b) => (a !== null && a.cost <= b.cost ? a : b), null);
    if (next === null) break;
    hubs = next.hubs;
    if (next.cost < best.cost) best = next;
  }
  // The greedy choice is short-sighted; where much is at stake, a few others around it are tried.
  if (best.cost > DEAR) {
    for (let twist = 1; twist <= TWISTS; twist++) {
      const other = orderWithout(board, best.hubs, twist);
      if (other.cost < best.cost) best = other;
    }
  }
  return written(structure, board, best);
}

/** The structure as bit masks over present signs. */
interface Board {
  readonly reach: readonly number[];
  readonly states: readonly number[];
  /** Multiply-adds per entry of the vector. */
  readonly effort: readonly number[];
  /** Variables that touch more than one sign, widest first. */
  readonly wide: readonly number[];
  readonly makers: readonly (readonly number[])[];
}

function boardOf({ sparks, leaks }: Structure): Board {
  const reach = sparks.map((states) =>
    states.reduce((mask, list) => list.reduce((m, { sign }) => m | (1 << sign), mask), 0),
  );
  const wide = [...reach.keys()]
    .filter((v) => popCount(reach[v]!) > 1)
    .sort((a, b) => popCount(reach[b]!) - popCount(reach[a]!) || a - b);
  return {
    reach,
    states: sparks.map(({ length }) => length),
    effort: sparks.map((states) => states.reduce((n, list) => n + 1 + list.length, 0)),
    wide,
    makers: leaks.map((_, sign) => wide.filter((v) => (reach[v]! & (1 << sign)) !== 0)),
  };
}

interface Order {
  readonly hubs: readonly number[];
  readonly variables: readonly number[];
  readonly cost: number;
}

/**
 * An order for given hubs: finishes next the sign that leaves the fewest open (greedy minimum width), taking first those
 * of its makers that open the fewest new signs. Signs close as soon as their last maker is through.
 */
function orderWithout(board: Board, hubs: readonly number[], twist = 0): Order {
  const { reach, effort, makers } = board;
  const waiting = reach.map((mask, v) => popCount(mask) > 1 && !hubs.includes(v));
  const left = makers.map((list) => list.reduce((n, v) => n + (waiting[v] ? 1 : 0), 0));
  const variables: number[] = [];
  let open = 0;
  let cost = 0;
  for (;;) {
    const sign = cheapestSign(board, waiting, left, open, twist);
    if (sign === null) break;
    const todo = makers[sign]!.filter((v) => waiting[v]);
    while (todo.length > 0) {
      const next = todo.reduce((a, b) => (opens(b, open, reach) < opens(a, open, reach) ? b : a));
      todo.splice(todo.indexOf(next), 1);
      waiting[next] = false;
      variables.push(next);
      open |= reach[next]!;
      cost += effort[next]! * 2 ** popCount(open);
      for (let mask = reach[next]!; mask !== 0; mask &= mask - 1) {
        const touched = 31 - Math.clz32(mask & -mask);
        if (--left[touched]! === 0) open &= ~(1 << touched);
      }
    }
  }
  const turns = hubs.reduce((n, hub) => n * board.states[hub]!, 1);
  return { hubs, variables, cost: 2 * turns * (cost + STEP * (variables.length + 2 * makers.length)) };
}

const opens = (variable: number, open: number, reach: readonly number[]) =>
  popCount(reach[variable]! & ~open);

function cheapestSign(
  board: Board,
  waiting: readonly boolean[],
  left: readonly number[],
  open: number,
  twist: number,
) {
  let best: number | null = null;
  let least = Infinity;
  for (let sign = 0; sign < left.length; sign++) {
    if (left[sign] === 0) continue;
    let mask = open | (1 << sign);
    for (const v of board.makers[sign]!) if (waiting[v]) mask |= board.reach[v]!;
    // A twist blurs the widths by up to one sign and a half, always the same way for the same twist.
    const width = popCount(mask) + 1.5 * (((sign + 1) * twist * 0.618034) % 1);
    if (width < least) [best, least] = [sign, width];
  }
  return best;
}

/** The order written out as steps on the vector. */
function written(structure: Structure, { reach }: Board, { hubs, variables, cost }: Order): Plan {
  const steps: Step[] = [];
  const made = variables.reduce((mask, v) => mask | reach[v]!, 0);
  structure.leaks.forEach((_, sign) => {
    if ((made & (1 << sign)) === 0) steps.push({ kind: "open" }, { kind: "close", sign, bit: 0 });
  });
  const open: number[] = [];
  variables.forEach((variable, i) => {
    const before = open.length;
    for (let mask = reach[variable]!; mask !== 0; mask &= mask - 1) {
      const sign = 31 - Math.clz32(mask & -mask);
      if (!open.includes(sign)) open.push(sign);
    }
    const moves = structure.sparks[variable]!.map((sparks) => movesOf(sparks, open, before));
    steps.push({ kind: "variable", variable, moves });
    const later = variables.slice(i + 1).reduce((mask, v) => mask | reach[v]!, 0);
    for (const sign of [...open]) {
      if ((later & (1 << sign)) !== 0) continue;
      const bit = open.indexOf(sign);
      steps.push({ kind: "close", sign, bit });
      open.splice(bit, 1);
    }
  });
  const lone = reach.flatMap((mask, variable) =>
    popCount(mask) === 1 && !hubs.includes(variable) ? [{ variable, sign: 31 - Math.clz32(mask) }] : [],
  );
  return { hubs, lone, steps, cost };
}

function movesOf(sparks: readonly Spark[], open: readonly number[], before: number): Moves {
  const doublings = open.slice(before).map((sign) => sparks.find((spark) => spark.sign === sign)?.q ?? 0);
  const pushes = sparks
    .map(({ sign, q }) => ({ bit: open.indexOf(sign), q }))
    .filter(({ bit }) => bit < before)
    .sort((a, b) => a.bit - b.bit);
  return { pushes, doublings };
}

function popCount(mask: number): number {
  let x = mask - ((mask >>> 1) & 0x55555555);
  x = (x & 0x33333333) + ((x >>> 2) & 0x33333333);
  return Math.imul((x + (x >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}
