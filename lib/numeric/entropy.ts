/** p·log2(p) with its limit 0 at p = 0. NaN below 0. */
function plog2(p: number): number {
  return p === 0 ? 0 : p * Math.log2(p);
}

/** Shannon entropy in bits of a distribution that sums to 1. NaN when a part is negative or NaN. */
export function entropyBits(distribution: readonly number[]): number {
  let sum = 0;
  for (const p of distribution) sum += plog2(p);
  return sum === 0 ? 0 : -sum;
}

/** Entropy in bits of a yes-or-no with probability p. NaN outside [0, 1]. */
export function binaryEntropyBits(p: number): number {
  return entropyBits([p, 1 - p]);
}
