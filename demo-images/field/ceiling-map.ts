import type { HeightGrid } from "./height-grid";

/** Highest point of each block of the grid, so that rays skip empty air. */
export interface CeilingMap {
  readonly block: number;
  readonly nx: number;
  readonly ny: number;
  readonly top: Float32Array;
  readonly highest: number;
}

/** Points along a side of a block; a power of two, because rays find their block by a shift. */
export const BLOCK_SHIFT = 4;
export const BLOCK = 1 << BLOCK_SHIFT;

export function createCeilingMap(grid: HeightGrid): CeilingMap {
  const nx = Math.ceil(grid.nx / BLOCK);
  const ny = Math.ceil(grid.ny / BLOCK);
  const top = new Float32Array(nx * ny).fill(-Infinity);
  let highest = -Infinity;
  for (let j = 0; j < grid.ny; j++) {
    for (let i = 0; i < grid.nx; i++) {
      const h = grid.h[j * grid.nx + i]!;
      if (h > highest) highest = h;
      // A point on a block's border belongs to both blocks: cells span it.
      for (let bj = ((j - 1) / BLOCK) | 0; bj <= ((j / BLOCK) | 0); bj++) {
        for (let bi = ((i - 1) / BLOCK) | 0; bi <= ((i / BLOCK) | 0); bi++) {
          const k = bj * nx + bi;
          if (h > top[k]!) top[k] = h;
        }
      }
    }
  }
  return { block: BLOCK, nx, ny, top, highest };
}
