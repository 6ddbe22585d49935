/**
 * Lesnewich's wire-melting relation (Welding Journal, 1958): feed = a·I + b·L·I², in steady state.
 * a: heating by the arc, mm/(s·A); b: heating by the current in the stick-out, 1/(s·A²);
 * L: electrode extension from contact tip to arc, mm (contact tip to work less the arc length); I: mean current, A.
 */
export interface BurnOff {
  readonly a: number;
  readonly b: number;
  /**
   * A constant feed, mm/s, where a wire's own table asks for one (a published variant of the relation has it). Left out: 0.
   * Then the relation holds inside the range of its data only.
   */
  readonly c?: number;
}

/** Wire feed, mm/s. NaN for a negative current or extension. */
export function feedForCurrent({ a, b, c = 0 }: BurnOff, currentA: number, extensionMm: number): number {
  if (!(currentA >= 0) || !(extensionMm >= 0)) return NaN;
  return c + a * currentA + b * extensionMm * currentA ** 2;
}

/** Current, A: the positive root; 0 at and below the constant feed. NaN for a negative feed or extension. */
export function currentForFeed({ a, b, c = 0 }: BurnOff, feedMmPerS: number, extensionMm: number): number {
  if (!(feedMmPerS >= 0) || !(extensionMm >= 0)) return NaN;
  // Written so that b·L -> 0 goes over into feed/a instead of 0/0.
  const feed = Math.max(0, feedMmPerS - c);
  return (2 * feed) / (a + Math.sqrt(a * a + 4 * b * extensionMm * feed));
}
