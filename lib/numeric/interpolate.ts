/** A point of a curve: x, then y. */
export type Knot = readonly [x: number, y: number];

/**
 * Straight lines between knots whose x ascend; flat beyond the ends. NaN for NaN or no knots.
 */
export function interpolate(knots: readonly Knot[], x: number): number {
  const first = knots[0];
  const last = knots[knots.length - 1];
  if (first === undefined || last === undefined || Number.isNaN(x)) return NaN;
  if (x <= first[0]) return first[1];
  if (x >= last[0]) return last[1];
  const i = knots.findIndex(([at]) => at > x);
  const [x0, y0] = knots[i - 1] ?? first;
  const [x1, y1] = knots[i] ?? last;
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}
