/** Finest division of a welder's rule. */
export const SIXTY_FOURTHS = 64;

/** A count of 64ths as a reduced mixed number: 72 -> "1 1/8". */
export function mixedNumber(sixtyFourths: number): string {
  const whole = Math.floor(sixtyFourths / SIXTY_FOURTHS);
  let above = sixtyFourths % SIXTY_FOURTHS;
  let below = SIXTY_FOURTHS;
  while (above !== 0 && above % 2 === 0) {
    above /= 2;
    below /= 2;
  }
  if (above === 0) return String(whole);
  return whole === 0 ? `${above}/${below}` : `${whole} ${above}/${below}`;
}

/** Inches to the nearest 64th; a positive length that would read 0 says "under 1/64". */
export function inchFraction(inches: number): string {
  const count = Math.round(inches * SIXTY_FOURTHS);
  return count === 0 && inches > 0 ? "under 1/64" : mixedNumber(count);
}

/**
 * Value and uncertainty as fractions. The value is rounded no finer than it is known, and the printed uncertainty is
 * rounded up and includes that rounding: the printed interval always contains the true one. null above half an inch
 * of uncertainty, where fractions would only pretend.
 */
export function inchFractionWithUncertainty(inches: number, uncertainty: number): string | null {
  if (uncertainty > 1 / 2) return null;
  let step = 1;
  while (step < 16 && (2 * step) / SIXTY_FOURTHS <= uncertainty / 2) step *= 2;
  const count = Math.round((inches * SIXTY_FOURTHS) / step) * step;
  const rounding = Math.abs(count - inches * SIXTY_FOURTHS);
  const spread = Math.ceil((uncertainty * SIXTY_FOURTHS + rounding) / step - 1e-9) * step;
  return `${mixedNumber(count)} ± ${mixedNumber(spread)}`;
}
