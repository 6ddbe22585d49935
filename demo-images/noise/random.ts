/** Seeded random numbers. The same seed gives the same sequence on every run; nothing here reads a clock. */
export interface Random {
  /** Uniform in [0, 1). */
  next(): number;
  /** Uniform in [low, high). */
  between(low: number, high: number): number;
  /** Normal with the given mean and standard deviation (Box and Muller 1958). */
  normal(mean: number, deviation: number): number;
  /** Log-normal by its median and the spread of its logarithm. */
  logNormal(median: number, spread: number): number;
  /** True with probability p. */
  chance(p: number): boolean;
}

/** Mixes two integers into one 32-bit seed, so that parts of a scene draw independent numbers. */
export function mixSeed(seed: number, part: number): number {
  let h = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ Math.imul(part + 0x7f4a7c15, 0xc2b2ae35);
  h = Math.imul(h ^ (h >>> 16), 0x27d4eb2f);
  return (h ^ (h >>> 15)) >>> 0;
}

/** A seed for a named part of the scene: adding a part never shifts the numbers of another. */
export function namedSeed(seed: number, name: string): number {
  let part = 0;
  for (const letter of name) part = (Math.imul(part, 31) + letter.charCodeAt(0)) | 0;
  return mixSeed(seed, part);
}

/** Mulberry32 (Tommy Ettinger, public domain): 32 bits of state, ample for placing a few thousand things. */
export function createRandom(seed: number): Random {
  let state = seed | 0;
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = (mean: number, deviation: number): number =>
    mean + deviation * Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  return {
    next,
    between: (low, high) => low + (high - low) * next(),
    normal,
    logNormal: (median, spread) => median * Math.exp(normal(0, spread)),
    chance: (p) => next() < p,
  };
}
