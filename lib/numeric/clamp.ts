/** Nearest number to x in [low, high]; both ends belong. NaN when x is NaN. */
export function clamp(x: number, low: number, high: number): number {
  return x < low ? low : x > high ? high : x;
}
