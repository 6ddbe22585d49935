import { studentQuantile } from "./student";

/** Agreement beyond chance with its two-sided interval; null where nothing can be said. */
export interface Kappa {
  /** 1: all agree; 0: no more than by chance. null where chance alone makes all agree: one kind of answer was given. */
  readonly value: number | null;
  readonly low: number | null;
  readonly high: number | null;
  /** Share of agreement seen, and expected by chance; 0 to 1. */
  readonly observed: number;
  readonly expected: number;
}

const KAPPA_CONFIDENCE = 0.95;
const Z = 1.959963984540054;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const inside = (value: number): number => Math.min(1, Math.max(-1, value));

function bare(observed: number, expected: number, error: number | null, reach: number): Kappa {
  if (!(expected < 1)) return { value: null, low: null, high: null, observed, expected };
  const value = (observed - expected) / (1 - expected);
  if (error === null || !Number.isFinite(error)) return { value, low: null, high: null, observed, expected };
  return {
    value,
    low: inside(value - reach * error),
    high: inside(value + reach * error),
    observed,
    expected,
  };
}

/**
 * Cohen's kappa of two people who put the same things into the same kinds (Cohen 1960, Educational and Psychological
 * Measurement 20, 37-46), with the large-sample error of Fleiss, Cohen and Everitt (1969, Psychological Bulletin 72,
 * 323-327).
 *
 * @param table Square: how often the first said row and the second said column; numbers from 0 on. Nothing in it: null.
 */
export function cohenKappa(table: readonly (readonly number[])[]): Kappa {
  const n = sum(table.map(sum));
  if (n === 0) return { value: null, low: null, high: null, observed: 0, expected: 0 };
  const p = table.map((row) => row.map((count) => count / n));
  const rows = p.map(sum);
  const columns = p.map((_, j) => sum(p.map((row) => row[j] ?? 0)));
  const observed = sum(p.map((row, i) => row[i] ?? 0));
  const expected = sum(rows.map((row, i) => row * (columns[i] ?? 0)));
  let [same, apart] = [0, 0];
  for (const [i, row] of p.entries())
    for (const [j, share] of row.entries())
      if (i === j)
        same += share * (1 - expected - ((rows[i] ?? 0) + (columns[i] ?? 0)) * (1 - observed)) ** 2;
      else apart += share * ((columns[i] ?? 0) + (rows[j] ?? 0)) ** 2;
  const spread = (observed * expected - 2 * expected + observed) ** 2;
  const variance = (same + (1 - observed) ** 2 * apart - spread) / (n * (1 - expected) ** 4);
  return bare(observed, expected, Math.sqrt(Math.max(0, variance)), Z);
}

/** Fleiss' observed and expected agreement over things that each were put into kinds by as many people. */
function agreement(counts: readonly (readonly number[])[]): { observed: number; expected: number } {
  const raters = sum(counts[0] ?? []);
  const within = counts.map((row) => sum(row.map((count) => count * (count - 1))) / (raters * (raters - 1)));
  const kinds = counts[0] ?? [];
  const shares = kinds.map((_, j) => sum(counts.map((row) => row[j] ?? 0)) / (counts.length * raters));
  return { observed: sum(within) / counts.length, expected: sum(shares.map((share) => share * share)) };
}

const kappaOf = ({ observed, expected }: ReturnType<typeof agreement>): number =>
  (observed - expected) / (1 - expected);

/**
 * Fleiss' kappa of any number of people (Fleiss 1971, Psychological Bulletin 76, 378-382). The interval is by the jackknife
 * over the things, with Student's t: the error that paper gives holds only where there is no agreement at all.
 *
 * @param counts For each thing how many people put it into each kind: each row adds up to the same number, at least 2.
 */
export function fleissKappa(counts: readonly (readonly number[])[]): Kappa {
  const raters = sum(counts[0] ?? []);
  if (counts.length === 0 || raters < 2 || counts.some((row) => sum(row) !== raters))
    return { value: null, low: null, high: null, observed: 0, expected: 0 };
  const all = agreement(counts);
  const n = counts.length;
  if (n < 3 || !(all.expected < 1)) return bare(all.observed, all.expected, null, 0);
  const without = counts.map((_, i) => kappaOf(agreement(counts.filter((__, j) => j !== i))));
  const mean = sum(without) / n;
  const error = Math.sqrt(((n - 1) / n) * sum(without.map((value) => (value - mean) ** 2)));
  return bare(all.observed, all.expected, error, studentQuantile((1 + KAPPA_CONFIDENCE) / 2, n - 1));
}
