import type { Way } from "./trial";

type Coded = readonly number[];

/** A factor that is set by the product of others: `factor` = product of `of`, all counted from 0. */
export interface Generator {
  readonly factor: number;
  readonly of: readonly number[];
}

/**
 * Two-level design in standard (Yates) order, the first factor changing fastest; with generators the fraction of it in
 * which those factors follow the others. NIST/SEMATECH e-Handbook 5.3.3.3 and 5.3.3.4.
 */
export function twoLevel(factors: number, generators: readonly Generator[] = []): readonly Coded[] {
  const made = new Map(generators.map(({ factor, of }) => [factor, of]));
  const free = range(factors).filter((i) => !made.has(i));
  return range(2 ** free.length).map((run) => {
    const level = new Map(free.map((factor, place) => [factor, (run >> place) & 1 ? 1 : -1]));
    return range(factors).map(
      (i) => level.get(i) ?? made.get(i)!.reduce((product, factor) => product * level.get(factor)!, 1),
    );
  });
}

/** Points of a composite whose star lies on the faces, so that nothing leaves the ranges; without the middle. */
export function faceCentred(factors: number): readonly Coded[] {
  const star = range(factors).flatMap((i) =>
    [-1, 1].map((end) => range(factors).map((j) => (j === i ? end : 0))),
  );
  return factors === 1 ? star : [...twoLevel(factors), ...star];
}

/** The same points in another order, the same for the same seed. Fisher and Yates; the numbers are mulberry32's. */
export function shuffled<T>(list: readonly T[], seed: number): readonly T[] {
  const next = random(seed);
  const out = [...list];
  for (let i = out.length - 1; i > 0; i -= 1) {
    const j = Math.floor(next() * (i + 1));
    [out[i], out[j]] = [out[j]!, out[i]!];
  }
  return out;
}

/** Numbers in [0, 1), the same for the same seed. */
export function random(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * What a trial begins with, from -1 to 1, in the order it is run. A factorial and a surface fill their beads: the middle
 * three times before any corner is repeated, because the scatter is known from repeats alone. A trial that seeks begins
 * with three beads, or four and the middle for two knobs, inside the ends.
 */
export function firstPoints(way: Way, factors: number, budget: number, seed: number): readonly Coded[] {
  const middle = range(factors).map(() => 0);
  if (way === "seek") return shuffled(seekStart(factors), seed).slice(0, budget);
  const outer = way === "factorial" ? twoLevel(factors) : faceCentred(factors);
  const round = [...outer, middle];
  const repeats = [middle, middle, ...range(budget).flatMap(() => [...outer, middle])];
  return shuffled([...round, ...repeats].slice(0, Math.max(budget, round.length)), seed);
}

/** Inside the ends, where a course can still go either way. Own choice. */
const START = 0.7;

const seekStart = (factors: number): readonly Coded[] =>
  factors === 1
    ? [[-START], [0], [START]]
    : [...twoLevel(factors).map((p) => p.map((x) => START * x)), range(factors).map(() => 0)];

const range = (n: number): readonly number[] => Array.from({ length: n }, (_, i) => i);
