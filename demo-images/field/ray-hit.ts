import type { HeightGrid } from "./height-grid";

/** Highest point of each block of the grid, so that rays skip empty air. */
export interface CeilingMap {
  readonly block: number;
  readonly nx: number;
  readonly ny: number;
  readonly top: Float32Array;
  readonly highest: number;
}

const BLOCK = 16;

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

/** What a ray met: the field at (fx, fy) in grid units, a cut side of the plate, or nothing. */
export interface RayHit {
  kind: "field" | "side" | "none";
  t: number;
  fx: number;
  fy: number;
  /** 0 x-side, 1 y-side, for `side`. */
  axis: 0 | 1;
  below: number;
}

export const createRayHit = (): RayHit => ({ kind: "none", t: 0, fx: 0, fy: 0, axis: 0, below: 0 });

export type CastRay = (hit: RayHit, dx: number, dy: number, dz: number) => void;

/** A caster of rays from one eye against one grid; `sideDepthMm` is how far down the plate's cut sides reach. */
export function createRayCaster(
  grid: HeightGrid,
  ceiling: CeilingMap,
  eye: readonly [number, number, number],
  sideDepthMm: number,
): CastRay {
  const { h, nx, ny, stepMm } = grid;
  const ox = (eye[0] - grid.x0) / stepMm;
  const oy = (eye[1] - grid.y0) / stepMm;
  const oz = eye[2];
  const maxX = nx - 1;
  const maxY = ny - 1;
  const heightAt = (fx: number, fy: number): number => {
    const i = fx < 0 ? 0 : fx >= maxX ? maxX - 1 : fx | 0;
    const j = fy < 0 ? 0 : fy >= maxY ? maxY - 1 : fy | 0;
    const u = fx - i;
    const v = fy - j;
    const k = j * nx + i;
    const low = h[k]! + (h[k + 1]! - h[k]!) * u;
    return low + (h[k + nx]! + (h[k + nx + 1]! - h[k + nx]!) * u - low) * v;
  };
  return (hit, dxMm, dyMm, dz) => {
    hit.kind = "none";
    const dx = dxMm / stepMm;
    const dy = dyMm / stepMm;
    let tIn = 0;
    let tOut = Infinity;
    let axis: 0 | 1 = 0;
    const ax = dx === 0 ? -Infinity : (dx > 0 ? -ox : maxX - ox) / dx;
    const bx = dx === 0 ? (ox < 0 || ox > maxX ? -1 : Infinity) : (dx > 0 ? maxX - ox : -ox) / dx;
    const ay = dy === 0 ? -Infinity : (dy > 0 ? -oy : maxY - oy) / dy;
    const by = dy === 0 ? (oy < 0 || oy > maxY ? -1 : Infinity) : (dy > 0 ? maxY - oy : -oy) / dy;
    tIn = Math.max(tIn, ax, ay);
    if (ay > ax) axis = 1;
    tOut = Math.min(bx, by);
    if (tIn >= tOut) return;
    if (tIn > 0) {
      const fx = ox + dx * tIn;
      const fy = oy + dy * tIn;
      const below = heightAt(fx, fy) - (oz + dz * tIn);
      if (below > 0) {
        if (below > sideDepthMm) return;
        hit.kind = "side";
        hit.t = tIn;
        hit.axis = axis;
        hit.fx = fx;
        hit.fy = fy;
        hit.below = below;
        return;
      }
    }
    let t = tIn;
    if (dz < 0) t = Math.max(t, (ceiling.highest + 1e-4 - oz) / dz);
    const speed = Math.hypot(dx, dy);
    const cellStep = speed > 1e-9 ? 0.9 / speed : Infinity;
    const fall = Math.max(1e-6, -dz);
    const least = 0.12 * stepMm;
    let before = t;
    while (t < tOut) {
      const fx = ox + dx * t;
      const fy = oy + dy * t;
      const z = oz + dz * t;
      const bi = fx >> 4;
      const bj = fy >> 4;
      const top = ceiling.top[bj * ceiling.nx + bi]!;
      if (z > top) {
        const toX = dx > 0 ? ((bi + 1) * BLOCK - fx) / dx : dx < 0 ? (bi * BLOCK - fx) / dx : Infinity;
        const toY = dy > 0 ? ((bj + 1) * BLOCK - fy) / dy : dy < 0 ? (bj * BLOCK - fy) / dy : Infinity;
        const toTop = dz < 0 ? (top - z) / dz : Infinity;
        const leap = Math.min(toX, toY, toTop);
        before = t;
        t += Math.max(leap, 1e-7) + 1e-6;
        if (leap === toTop) t += 1e-6;
        continue;
      }
      const gap = z - heightAt(fx, fy);
      if (gap <= 0) break;
      before = t;
      t += Math.min(cellStep, Math.max(gap, least) / fall);
    }
    if (t >= tOut) return;
    let low = before;
    let high = t;
    for (let i = 0; i < 7; i++) {
      const mid = (low + high) / 2;
      if (oz + dz * mid > heightAt(ox + dx * mid, oy + dy * mid)) low = mid;
      else high = mid;
    }
    hit.kind = "field";
    hit.t = high;
    hit.fx = Math.min(maxX - 1e-3, Math.max(0, ox + dx * high));
    hit.fy = Math.min(maxY - 1e-3, Math.max(0, oy + dy * high));
  };
}
