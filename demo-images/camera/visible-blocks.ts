import type { HeightGrid } from "../field/height-grid";
import { projectPoint, type Camera } from "./camera";

/** Which blocks of the grid can fall into the picture; nothing else needs light. */
export interface VisibleBlocks {
  readonly block: number;
  readonly nx: number;
  readonly seen: Uint8Array;
}

const BLOCK = 16;
/** Blocks this near to the picture's edge count as seen: bilinear reading reaches a step out, and distortion bends sides. */
const MARGIN_PX = 24;

/** Lowest and highest point of a block, its far border included. */
function heightRange(grid: HeightGrid, bi: number, bj: number): readonly [number, number] {
  let low = Infinity;
  let high = -Infinity;
  for (let j = bj * BLOCK; j <= Math.min(grid.ny - 1, (bj + 1) * BLOCK); j++)
    for (let i = bi * BLOCK; i <= Math.min(grid.nx - 1, (bi + 1) * BLOCK); i++) {
      const h = grid.h[j * grid.nx + i]!;
      if (h < low) low = h;
      if (h > high) high = h;
    }
  return [low, high];
}

export function createVisibleBlocks(grid: HeightGrid, camera: Camera): VisibleBlocks {
  const nx = Math.ceil(grid.nx / BLOCK);
  const ny = Math.ceil(grid.ny / BLOCK);
  const seen = new Uint8Array(nx * ny);
  const size = BLOCK * grid.stepMm;
  for (let bj = 0; bj < ny; bj++) {
    for (let bi = 0; bi < nx; bi++) {
      const x = grid.x0 + bi * size;
      const y = grid.y0 + bj * size;
      const [low, high] = heightRange(grid, bi, bj);
      const box = { left: Infinity, right: -Infinity, top: Infinity, bottom: -Infinity };
      for (let corner = 0; corner < 8; corner++) {
        const [px, py] = projectPoint(camera, [
          x + (corner & 1 ? size : 0),
          y + (corner & 2 ? size : 0),
          corner & 4 ? high : low,
        ]);
        box.left = Math.min(box.left, px);
        box.right = Math.max(box.right, px);
        box.top = Math.min(box.top, py);
        box.bottom = Math.max(box.bottom, py);
      }
      const inside =
        box.right > -MARGIN_PX &&
        box.left < camera.widthPx + MARGIN_PX &&
        box.bottom > -MARGIN_PX &&
        box.top < camera.heightPx + MARGIN_PX;
      if (inside) seen[bj * nx + bi] = 1;
    }
  }
  return { block: BLOCK, nx, seen };
}
