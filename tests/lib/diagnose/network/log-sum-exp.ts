/**
 * log(Σ exp(x)) without overflow. Empty: -Infinity, the logarithm of an empty sum. NaN in, NaN out.
 */
export function logSumExp(values: readonly number[]): number {
  let largest = -Infinity;
  for (const value of values) {
    if (Number.isNaN(value)) return NaN;
    if (value > largest) largest = value;
  }
  // Infinity - Infinity would be NaN; both infinite cases are their own answer.
  if (!Number.isFinite(largest)) return largest;
  let sum = 0;
  for (const value of values) sum += Math.exp(value - largest);
  return largest + Math.log(sum);
}
