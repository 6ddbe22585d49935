/** Something at one place along the weld (mm from its start) that adds to a sum: a pore with its diameter. */
export interface PlacedAmount {
  readonly at: number;
  readonly amount: number;
}

/** A stretch along the weld, from <= to, in mm. */
export type StretchAlong = readonly [from: number, to: number];

export interface WorstWindow {
  readonly sum: number;
  /** Where the worst window begins. */
  readonly from: number;
}

/**
 * Largest sum of the amounts within any window of the given length; the window holds both its ends. Exact: a worst
 * window can always be pushed right until it begins at one of the places.
 *
 * @param closedLengthMm Length of a weld that closes on itself; its windows may lie across the closing point.
 */
export function worstAmount(
  placed: readonly PlacedAmount[],
  windowMm: number,
  closedLengthMm: number | null = null,
): WorstWindow {
  const items = unrolled([...placed], closedLengthMm, windowMm, (item, by) => ({
    ...item,
    at: item.at + by,
  })).sort((a, b) => a.at - b.at);
  let worst: WorstWindow = { sum: 0, from: 0 };
  let sum = 0;
  let first = 0;
  for (const item of items) {
    sum += item.amount;
    // Relative slack, so that three pores exactly one window apart are not parted by rounding.
    while (item.at - items[first]!.at > windowMm * (1 + 1e-12)) sum -= items[first++]!.amount;
    if (sum > worst.sum) worst = { sum, from: items[first]!.at };
  }
  return worst;
}

/**
 * Largest total length of the stretches inside any window of the given length. Stretches that lie side by side (both
 * toes) count each. Exact: the total changes linearly as the window moves, so it peaks where the window begins with a
 * stretch or ends with one.
 */
export function worstLength(
  stretches: readonly StretchAlong[],
  windowMm: number,
  closedLengthMm: number | null = null,
): WorstWindow {
  const shift = ([from, to]: StretchAlong, by: number): StretchAlong => [from + by, to + by];
  const items = unrolled([...stretches], closedLengthMm, windowMm, shift);
  const starts = items.flatMap(([from, to]) => [from, to - windowMm]);
  let worst: WorstWindow = { sum: 0, from: 0 };
  for (const start of starts) {
    const end = start + windowMm;
    const sum = items.reduce(
      (total, [from, to]) => total + Math.max(0, Math.min(to, end) - Math.max(from, start)),
      0,
    );
    if (sum > worst.sum) worst = { sum, from: start };
  }
  return worst;
}

/** Largest number of places within any window of the given length. */
export function worstCount(
  places: readonly number[],
  windowMm: number,
  closedLengthMm: number | null = null,
): WorstWindow {
  return worstAmount(
    places.map((at) => ({ at, amount: 1 })),
    windowMm,
    closedLengthMm,
  );
}

/** Least distance along the weld between neighbours; Infinity for fewer than two. */
export function leastSpacing(places: readonly number[]): number {
  const sorted = [...places].sort((a, b) => a - b);
  return sorted.slice(1).reduce((least, at, i) => Math.min(least, at - sorted[i]!), Infinity);
}

/** Repeats a closed weld once more, so that an open window can lie across its closing point; never twice over itself. */
function unrolled<T>(
  items: T[],
  closedLengthMm: number | null,
  windowMm: number,
  shift: (item: T, by: number) => T,
): T[] {
  if (closedLengthMm === null || windowMm >= closedLengthMm) return items;
  return [...items, ...items.map((item) => shift(item, closedLengthMm))];
}
