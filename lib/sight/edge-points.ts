import type { Plane } from "./plane";

/** Places where brightness changes most across an edge, in the plane's pixels, with the direction in which it rises. */
export interface EdgePoints {
  readonly x: Float32Array;
  readonly y: Float32Array;
  /** Unit vector towards the brighter side. */
  readonly ux: Float32Array;
  readonly uy: Float32Array;
  readonly steepness: Float32Array;
  readonly count: number;
}

/** Below this a step is noise, levels per pixel. */
const LEAST_STEP = 3;

/** The steepest `share` of all pixels, thinned to a line one pixel wide along each edge (Canny 1986). */
export function edgePoints({ width, height, data }: Plane, share: number): EdgePoints {
  const gx = new Float32Array(width * height);
  const gy = new Float32Array(width * height);
  const steep = new Float32Array(width * height);
  for (let j = 1; j < height - 1; j++)
    for (let i = 1; i < width - 1; i++) {
      const k = j * width + i;
      const row = (r: number): number => data[r + 1]! - data[r - 1]!;
      gx[k] = (row(k - width) + 2 * row(k) + row(k + width)) / 8;
      const column = (c: number): number => data[c + width]! - data[c - width]!;
      gy[k] = (column(k - 1) + 2 * column(k) + column(k + 1)) / 8;
      steep[k] = Math.hypot(gx[k]!, gy[k]!);
    }
  const sorted = Float32Array.from(steep).sort();
  const least = Math.max(LEAST_STEP, sorted[Math.floor((1 - share) * (sorted.length - 1))]!);
  const kept: number[] = [];
  for (let j = 2; j < height - 2; j++)
    for (let i = 2; i < width - 2; i++) {
      const k = j * width + i;
      if (steep[k]! < least) continue;
      const step = Math.round(gx[k]! / steep[k]!) + width * Math.round(gy[k]! / steep[k]!);
      if (steep[k]! >= steep[k + step]! && steep[k]! > steep[k - step]!) kept.push(k);
    }
  const of = (value: (k: number) => number): Float32Array => Float32Array.from(kept, value);
  return {
    x: of((k) => (k % width) + 0.5),
    y: of((k) => Math.floor(k / width) + 0.5),
    ux: of((k) => gx[k]! / steep[k]!),
    uy: of((k) => gy[k]! / steep[k]!),
    steepness: of((k) => steep[k]!),
    count: kept.length,
  };
}
