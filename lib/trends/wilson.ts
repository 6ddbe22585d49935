import { clamp } from "@/lib/numeric";

/** The 0.975 quantile of the standard normal distribution, to the precision of a double. */
export const Z_95 = 1.959963984540054;

/**
 * Wilson's score interval for `count` of `of` (whole, 0 <= count <= of, of > 0): [low, high] in [0, 1]; NaN for of = 0.
 * Wilson 1927; method 3 of Newcombe 1998, Statistics in Medicine 17, 857-872. No continuity correction.
 */
export function wilson(count: number, of: number, z = Z_95): readonly [low: number, high: number] {
  const q = of - count;
  const middle = count + (z * z) / 2;
  const half = z * Math.sqrt((count * q) / of + (z * z) / 4);
  const whole = of + z * z;
  // At none and at all the end is exact; rounding must not leave 1e-17 there.
  const low = count === 0 && of > 0 ? 0 : (middle - half) / whole;
  const high = count === of && of > 0 ? 1 : (middle + half) / whole;
  return [clamp(low, 0, 1), clamp(high, 0, 1)];
}
