import { betaQuantile } from "@/lib/numeric";

/**
 * The exact interval for `count` of `of` (whole, 0 <= count <= of, of > 0) at `confidence`, e.g. 0.95: each tail holds
 * at most half of what is left, so coverage is never below it. Clopper and Pearson 1934, by beta quantiles; method 5
 * of Newcombe 1998, Statistics in Medicine 17, 857-872.
 */
export function clopperPearson(
  count: number,
  of: number,
  confidence: number,
): readonly [low: number, high: number] {
  const tail = (1 - confidence) / 2;
  const low = count === 0 ? 0 : betaQuantile(tail, count, of - count + 1);
  const high = count === of ? 1 : betaQuantile(1 - tail, count + 1, of - count);
  return [low, high];
}
