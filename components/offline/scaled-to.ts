/** A picture's size with its longest side at most `most`, px; one that is small enough stays. */
export function scaledTo(
  widthPx: number,
  heightPx: number,
  most: number,
): { readonly widthPx: number; readonly heightPx: number } {
  const factor = Math.min(1, most / Math.max(widthPx, heightPx));
  const part = (side: number): number => Math.max(1, Math.round(side * factor));
  return { widthPx: part(widthPx), heightPx: part(heightPx) };
}
