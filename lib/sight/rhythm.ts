/** A profile less its own running mean over `reach` either way. */
export function withoutDrift(profile: Float64Array, reach: number): Float64Array {
  const sums = new Float64Array(profile.length + 1);
  for (let i = 0; i < profile.length; i++) sums[i + 1] = sums[i]! + profile[i]!;
  return profile.map((value, i) => {
    const from = Math.max(0, i - reach);
    const to = Math.min(profile.length, i + reach + 1);
    return value - (sums[to]! - sums[from]!) / (to - from);
  });
}

export interface Rhythm {
  /** From one beat to the next, samples. */
  readonly period: number;
  /** How alike the profile is to itself one beat on: 1 the same, 0 not at all. */
  readonly strength: number;
}

/**
 * The beat of a profile without drift: the shortest shift between `least` and `most` samples at which it is nearly as like
 * itself as it ever is again (autocorrelation, normalised). Null where it is at none.
 */
export function rhythmOf(profile: Float64Array, least: number, most: number): Rhythm | null {
  const alike = new Float64Array(most + 2);
  for (let lag = Math.max(1, least - 1); lag <= most + 1 && lag < profile.length / 2; lag++)
    alike[lag] = likeness(profile, lag);
  const peaks: number[] = [];
  for (let lag = Math.max(2, least); lag <= most; lag++)
    if (alike[lag]! > alike[lag - 1]! && alike[lag]! >= alike[lag + 1]! && alike[lag]! > 0) peaks.push(lag);
  if (peaks.length === 0) return null;
  const highest = Math.max(...peaks.map((lag) => alike[lag]!));
  const lag = peaks.find((one) => alike[one]! >= 0.75 * highest)!;
  const [a, b, c] = [alike[lag - 1]!, alike[lag]!, alike[lag + 1]!];
  const bend = a - 2 * b + c;
  return { period: lag + (bend < 0 ? (0.5 * (a - c)) / bend : 0), strength: b };
}

function likeness(profile: Float64Array, lag: number): number {
  let [product, first, second] = [0, 0, 0];
  for (let i = 0; i + lag < profile.length; i++) {
    product += profile[i]! * profile[i + lag]!;
    first += profile[i]! ** 2;
    second += profile[i + lag]! ** 2;
  }
  return first > 0 && second > 0 ? product / Math.sqrt(first * second) : 0;
}
