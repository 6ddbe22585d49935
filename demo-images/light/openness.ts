import type { HeightGrid } from "../field/height-grid";
import type { Profile } from "../geometry/profile";

/** Coarse map of how open to the room each place is, 1 open to 0 shut in; sampled bilinearly. */
export interface OpennessMap {
  readonly nx: number;
  readonly ny: number;
  readonly cell: number;
  readonly values: Float32Array;
}

/** Mean of a window of half-size r, clipped at the border, by running sums. */
function boxBlur(source: Float32Array, nx: number, ny: number, r: number): Float32Array {
  const middle = new Float32Array(nx * ny);
  const out = new Float32Array(nx * ny);
  const pass = (
    from: Float32Array,
    to: Float32Array,
    n: number,
    lines: number,
    step: number,
    stride: number,
  ): void => {
    for (let line = 0; line < lines; line++) {
      const base = line * stride;
      let sum = 0;
      let count = 0;
      for (let i = 0; i < Math.min(n, r); i++) {
        sum += from[base + i * step]!;
        count++;
      }
      for (let i = 0; i < n; i++) {
        if (i + r < n) {
          sum += from[base + (i + r) * step]!;
          count++;
        }
        if (i - r - 1 >= 0) {
          sum -= from[base + (i - r - 1) * step]!;
          count--;
        }
        to[base + i * step] = sum / count;
      }
    }
  };
  pass(source, middle, nx, ny, 1, nx);
  pass(middle, out, ny, nx, nx, 1);
  return out;
}

/** Radii in mm at which a hollow darkens, and how strongly (own estimate, tuned against photographs by eye). */
const scales = [
  { radiusMm: 0.35, strength: 0.5 },
  { radiusMm: 1.0, strength: 0.55 },
  { radiusMm: 3.0, strength: 0.8 },
] as const;

export function createOpennessMap(grid: HeightGrid, profile: Profile): OpennessMap {
  const cell = Math.max(1, Math.round(0.16 / grid.stepMm));
  const nx = Math.ceil(grid.nx / cell);
  const ny = Math.ceil(grid.ny / cell);
  const first = profile.facets[0]!;
  const slope = (first.z1 - first.z0) / (first.y1 - first.y0);
  const heights = new Float32Array(nx * ny);
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) {
      const jj = Math.min(grid.ny - 1, j * cell);
      const ii = Math.min(grid.nx - 1, i * cell);
      // Leaning plates are levelled first, or the clipped window at the border would read as a hollow.
      const y = grid.y0 + jj * grid.stepMm;
      heights[j * nx + i] = grid.h[jj * grid.nx + ii]! + slope * Math.abs(y);
    }
  }
  const values = new Float32Array(nx * ny).fill(1);
  const cellMm = cell * grid.stepMm;
  for (const { radiusMm, strength } of scales) {
    const mean = boxBlur(heights, nx, ny, Math.max(1, Math.round(radiusMm / cellMm)));
    for (let k = 0; k < values.length; k++) {
      const hollow = (mean[k]! - heights[k]!) / radiusMm;
      if (hollow > 0) values[k] = Math.max(0.26, values[k]! / (1 + strength * Math.min(2.5, hollow)));
    }
  }
  if (slope < 0) darkenCorner(values, nx, ny, cellMm, grid.y0);
  return { nx, ny, cell, values };
}

/** The inner corner of a T-joint sees half the room. */
function darkenCorner(values: Float32Array, nx: number, ny: number, cellMm: number, y0: number): void {
  for (let j = 0; j < ny; j++) {
    const distance = Math.abs(y0 + j * cellMm);
    const open = 0.5 + 0.5 * Math.min(1, distance / 22) ** 0.6;
    for (let i = 0; i < nx; i++) values[j * nx + i]! *= open;
  }
}

export function sampleOpenness(map: OpennessMap, i: number, j: number): number {
  const fx = Math.min(map.nx - 1.001, i / map.cell);
  const fy = Math.min(map.ny - 1.001, j / map.cell);
  const ix = fx | 0;
  const iy = fy | 0;
  const u = fx - ix;
  const v = fy - iy;
  const k = iy * map.nx + ix;
  const low = map.values[k]! + (map.values[k + 1]! - map.values[k]!) * u;
  const high = map.values[k + map.nx]! + (map.values[k + map.nx + 1]! - map.values[k + map.nx]!) * u;
  return low + (high - low) * v;
}
