import { STRIP } from "./strip-size";
import type { StripPlanes } from "./types";

/** How the photo itself looks along the bead. */
export interface Looks {
  /** Share of the strip's places between the toes and about them that are blown to white. */
  readonly blown: number;
  /** Width over which the light turns at its sharpest edges, rows of the strip. */
  readonly edgeRows: number;
}

const WHITE = 0.985;

/** Looks at the rows from `top` to `bottom` of every column; those rows are the bead and what lies beside it. */
export function looksOf(planes: StripPlanes, top: number, bottom: number): Looks {
  const { rows, columns } = STRIP;
  const plane = rows * columns;
  const from = Math.max(1, Math.floor(top));
  const to = Math.min(rows - 2, Math.ceil(bottom));
  let [blown, seen] = [0, 0];
  const widths: number[] = [];
  const grey = (k: number): number =>
    0.299 * planes[k]! + 0.587 * planes[plane + k]! + 0.114 * planes[2 * plane + k]!;
  for (let column = STRIP.margin; column < columns - STRIP.margin; column += 2) {
    let [steepest, low, high] = [0, 1, 0];
    for (let row = from; row <= to; row++) {
      const k = row * columns + column;
      const light = grey(k);
      blown += light > WHITE ? 1 : 0;
      seen++;
      low = Math.min(low, light);
      high = Math.max(high, light);
      steepest = Math.max(steepest, Math.abs(grey(k + columns) - grey(k - columns)) / 2);
    }
    if (high - low > 0.04) widths.push((high - low) / Math.max(steepest, 1e-6));
  }
  widths.sort((a, b) => a - b);
  return { blown: seen === 0 ? 0 : blown / seen, edgeRows: widths[widths.length >> 1] ?? rows };
}
