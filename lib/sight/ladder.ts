import { inverse, Matrix } from "ml-matrix";
import type { Tick } from "./follow-ticks";

/** Where the k-th line of an even rule lies when it is seen at a slant: (a k + b) / (c k + 1), least squares. */
export interface Ladder {
  readonly at: (k: number) => number;
  /** Root mean square of what was seen about it, samples. */
  readonly rms: number;
  readonly kept: readonly Tick[];
}

/** Fitted twice, the second time without what lies three deviations off; null for fewer than eight lines. */
export function ladderThrough(ticks: readonly Tick[]): Ladder | null {
  const first = fit(ticks);
  if (first === null) return null;
  const limit = Math.max(3 * first.rms, 0.3);
  return fit(ticks.filter(({ k, at }) => Math.abs(first.at(k) - at) <= limit));
}

function fit(ticks: readonly Tick[]): Ladder | null {
  if (ticks.length < 8) return null;
  // About the middle and in units of the spread, so that the sums lose no digits.
  const n = ticks.length;
  const [km, am] = [ticks.reduce((s, t) => s + t.k, 0) / n, ticks.reduce((s, t) => s + t.at, 0) / n];
  const [ks, as] = [
    Math.max(...ticks.map((t) => Math.abs(t.k - km))),
    Math.max(...ticks.map((t) => Math.abs(t.at - am))),
  ];
  if (!(ks > 0) || !(as > 0)) return null;
  const rows = ticks.map(({ k, at }) => ({ u: (k - km) / ks, v: (at - am) / as }));
  const left = new Matrix(rows.map(({ u, v }) => [u, 1, -u * v]));
  const right = Matrix.columnVector(rows.map(({ v }) => v));
  const turned = left.transpose();
  const [a, b, c] = inverse(turned.mmul(left)).mmul(turned.mmul(right)).to1DArray();
  const at = (k: number): number => {
    const u = (k - km) / ks;
    return am + (as * (a! * u + b!)) / (c! * u + 1);
  };
  const rms = Math.sqrt(
    ticks.reduce((sum, tick) => sum + (at(tick.k) - tick.at) ** 2, 0) / Math.max(1, n - 3),
  );
  return { at, rms, kept: ticks };
}
