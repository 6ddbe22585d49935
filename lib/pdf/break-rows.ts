/** So many rows stand together where a table begins and where it ends. */
export const KEEP_ROWS = 3;

/**
 * How many rows of a table stand on each page: `first` points are left on this one, `later` on each further. A table
 * neither begins with fewer than three rows at the foot nor leaves fewer than three for its last page, as far as its rows
 * let it; a leading 0 says that it begins on the next page. A row higher than a page stands alone.
 */
export function breakRows(heights: readonly number[], first: number, later: number): readonly number[] {
  const counts: number[] = [];
  let at = 0;
  while (at < heights.length) {
    const isFirst = counts.length === 0;
    const rest = heights.slice(at);
    const fitting = fittingRows(rest, isFirst ? first : later);
    const count = kept(fitting, rest.length);
    const movesOn = isFirst && (count === 0 || (count < rest.length && count < KEEP_ROWS)) && later > first;
    counts.push(movesOn ? 0 : Math.max(1, count));
    at += counts.at(-1) ?? 1;
  }
  return counts;
}

function fittingRows(heights: readonly number[], room: number): number {
  let used = 0;
  const over = heights.findIndex((height) => (used += height) > room + 1e-9);
  return over < 0 ? heights.length : over;
}

/** Of so many that fit, as many as leave enough for the page after. */
function kept(fitting: number, all: number): number {
  if (fitting >= all) return all;
  const leaving = all - KEEP_ROWS;
  return fitting > leaving && leaving > 0 ? leaving : fitting;
}

/** How much room a table wants to begin on this page, without its titles: what `breakRows` does not move on. */
export function startHeight(heights: readonly number[], later: number): number {
  const sum = (count: number) => heights.slice(0, count).reduce((total, height) => total + height, 0);
  const whole = heights.length < 2 * KEEP_ROWS ? heights.length : KEEP_ROWS;
  return Math.min(sum(whole), later);
}
