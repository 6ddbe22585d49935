import { blurEvenly } from "./blur";
import type { Development } from "./development";
import type { Exposure } from "./expose";

/** Coarse map of the light far over white, which bleeds out of highlights; cells of `cell` pixels a side. */
export interface BloomMap {
  readonly cell: number;
  readonly nx: number;
  readonly ny: number;
  readonly over: Float32Array;
}

/** An empty map for a picture of this size, in memory that threads share. */
export function createBloomMap(widthPx: number, heightPx: number): BloomMap {
  const cell = Math.max(2, Math.round(widthPx / 700));
  const nx = Math.ceil(widthPx / cell);
  const ny = Math.ceil(heightPx / cell);
  return { cell, nx, ny, over: new Float32Array(new SharedArrayBuffer(12 * nx * ny)) };
}

/** Fills the map's rows `from` to `to` with the mean light over `white` in each cell. */
export function gatherBloom(
  map: BloomMap,
  { rgb }: Exposure,
  d: Development,
  white: number,
  from: number,
  to: number,
): void {
  const { cell, nx, over } = map;
  const { widthPx: width, heightPx: height } = d;
  for (let y = from * cell; y < Math.min(height, to * cell); y++) {
    const row = ((y / cell) | 0) * nx;
    for (let x = 0; x < width; x++) {
      const k = 3 * (y * width + x);
      const at = 3 * (row + ((x / cell) | 0));
      for (let c = 0; c < 3; c++)
        over[at + c]! += Math.min(6 * white, Math.max(0, rgb[k + c]! - white)) / (cell * cell);
    }
  }
}

/** Spreads the gathered light; once all rows are gathered. */
export function spreadBloom(map: BloomMap): void {
  blurEvenly(map.over, map.nx, map.ny, 2.2);
}

/** Adds `amount` of the spread light to a row of the picture, bilinear between the cells' middles. */
export function addBloomTo(line: Float32Array, map: BloomMap, y: number, amount: number): void {
  const { cell, nx, ny, over } = map;
  const fy = Math.min(ny - 1.001, Math.max(0, (y + 0.5) / cell - 0.5));
  const j = fy | 0;
  const v = fy - j;
  const down = ny > 1 ? 3 * nx : 0;
  for (let x = 0; 3 * x < line.length; x++) {
    const fx = Math.min(nx - 1.001, Math.max(0, (x + 0.5) / cell - 0.5));
    const i = fx | 0;
    const u = fx - i;
    const k = 3 * (j * nx + i);
    for (let c = k; c < k + 3; c++) {
      const low = over[c]! + (over[c + 3]! - over[c]!) * u;
      const high = over[c + down]! + (over[c + down + 3]! - over[c + down]!) * u;
      line[3 * x + c - k]! += amount * (low + (high - low) * v);
    }
  }
}
