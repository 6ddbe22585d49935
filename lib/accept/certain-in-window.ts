/** So much lies somewhere between `from` and `to` along the weld, nobody knows where in between; mm from the start. */
export interface Spread {
  readonly from: number;
  readonly to: number;
  readonly amount: number;
  /** What cannot be parted of it: one pore of a count, the largest pore of a sum of diameters. */
  readonly unit: number;
}

/** As in lib/measure, so that what lies exactly a window apart is not parted by rounding. */
const SLACK = 1 + 1e-12;

/**
 * No less than this lies in some stretch as long as the window, however everything lies within its own bounds. What lies
 * in a part of the weld that k windows cover is shared by those k, so one of them holds no less than a k-th: the worst
 * over all parts, and nothing of what may lie outside of the part is counted into it.
 */
export function certainInWindow(
  spreads: readonly Spread[],
  windowMm: number,
  closedLengthMm: number | null = null,
): number {
  const laid = spreads.map((one) => ({
    ...one,
    from: Math.min(one.from, one.to),
    to: Math.max(one.from, one.to),
    first: Math.min(one.from, one.to),
  }));
  // Round a weld that closes, what lies before the part begins comes once more after it.
  const again = closedLengthMm === null ? [] : laid.map((one) => movedBy(one, closedLengthMm));
  const byEnd = [...laid, ...again].sort((a, b) => a.to - b.to);
  const least = laid.reduce((most, { unit }) => Math.max(most, unit), 0);
  return [...new Set(laid.map(({ from }) => from))].reduce((worst, start) => {
    let sum = 0;
    return byEnd.reduce((most, { from, to, first, amount }) => {
      if (from < start || (from !== first && first >= start)) return most;
      sum += amount;
      return Math.max(most, sum / Math.max(1, Math.ceil((to - start) / windowMm / SLACK)));
    }, worst);
  }, least);
}

const movedBy = <T extends Spread>(one: T, by: number): T => ({
  ...one,
  from: one.from + by,
  to: one.to + by,
});
