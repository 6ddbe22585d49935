import type { Bead } from "../geometry/bead";
import { restartRelief } from "../geometry/restart";
import { fractalNoise1, fractalNoise2, noise2, smoothstep } from "../noise/noise";
import { raiseMask, sampleHeight, type HeightGrid } from "./height-grid";

/** How far beside a bead the plate still shows its heat, mm. */
export const HEAT_REACH_MM = 25.5;

interface Columns {
  readonly left: Float64Array;
  readonly right: Float64Array;
  readonly leftZ: Float64Array;
  readonly rightZ: Float64Array;
  readonly crown: Float64Array;
}

/** Averages along x, so that a bead lying on another's ripples does not copy each of them across its face. */
function smoothAlong(values: Float64Array, reach: number): Float64Array {
  const out = new Float64Array(values.length);
  for (let i = 0; i < values.length; i++) {
    let sum = 0;
    let count = 0;
    for (let k = Math.max(0, i - reach); k <= Math.min(values.length - 1, i + reach); k++) {
      if (Number.isNaN(values[k] as number)) continue;
      sum += values[k] as number;
      count++;
    }
    out[i] = count === 0 ? NaN : sum / count;
  }
  return out;
}

function readColumns(grid: HeightGrid, bead: Bead): Columns {
  const make = (): Float64Array => new Float64Array(grid.nx).fill(NaN);
  const left = make();
  const right = make();
  const leftZ = make();
  const rightZ = make();
  const crown = make();
  for (let i = 0; i < grid.nx; i++) {
    const x = grid.x0 + i * grid.stepMm;
    const toes = bead.toesAt(x);
    if (toes === null) continue;
    left[i] = toes.leftMm;
    right[i] = toes.rightMm;
    leftZ[i] = sampleHeight(grid, x, toes.leftMm);
    rightZ[i] = sampleHeight(grid, x, toes.rightMm);
    crown[i] = bead.crownAt(x);
  }
  const reach = Math.round(1.2 / grid.stepMm);
  return { left, right, leftZ: smoothAlong(leftZ, reach), rightZ: smoothAlong(rightZ, reach), crown };
}

/** Depth of the dish the dying pool leaves at the end of the bead, mm. */
function craterDish(bead: Bead, x: number, u: number): number {
  const { shape } = bead;
  if (shape.craterDepthMm <= 0) return 0;
  const half = (shape.rightMm - shape.leftMm) / 2;
  const along = (x - (shape.endMm - 1.25 * half)) / (1.05 * half);
  const r2 = along * along + (u / 0.8) * (u / 0.8);
  return r2 < 1 ? shape.craterDepthMm * (1 - r2) ** 1.5 : 0;
}

/** Lays the bead into the grid: its face between the toes, and how near each point was to the heat. */
export function paintBead(grid: HeightGrid, bead: Bead): void {
  const columns = readColumns(grid, bead);
  const { shape } = bead;
  for (let i = 0; i < grid.nx; i++) {
    const left = columns.left[i] as number;
    if (Number.isNaN(left)) continue;
    const right = columns.right[i] as number;
    const half = (right - left) / 2;
    const x = grid.x0 + i * grid.stepMm;
    const j0 = Math.max(0, Math.ceil((left - grid.y0) / grid.stepMm));
    const j1 = Math.min(grid.ny - 1, Math.floor((right - grid.y0) / grid.stepMm));
    const leftZ = columns.leftZ[i] as number;
    const rise = (columns.rightZ[i] as number) - leftZ;
    for (let j = j0; j <= j1; j++) {
      const y = grid.y0 + j * grid.stepMm;
      const u = Math.max(-1, Math.min(1, (y - left) / half - 1));
      const k = j * grid.nx + i;
      const cap = (1 - u * u) ** shape.capPower;
      const tie = smoothstep(0, 0.35, half * (1 - Math.abs(u)));
      const relief =
        tie *
        (bead.ripples.heightAt(x, u, half) +
          shape.roughMm *
            (1.6 * fractalNoise2(x * 0.9, y * 0.9, shape.seed + 41, 3) +
              noise2(x * 5, y * 5, shape.seed + 42)));
      const again = shape.restart === null ? 0 : restartRelief(shape.restart, half, x, u);
      const crown = (columns.crown[i] as number) * cap + again;
      const face = leftZ + (rise * (u + 1)) / 2 + crown - craterDish(bead, x, u);
      const edge = smoothstep(1, 0.86, Math.abs(u));
      const under = grid.h[k] as number;
      grid.h[k] = under + (face + relief - under) * Math.max(edge, Math.min(1, (face - under) * 4));
      grid.mask.crack[k] = 0;
      raiseMask(grid.mask.bead, k, smoothstep(1, 0.97, Math.abs(u)));
    }
  }
  paintHeat(grid, bead);
}

/** How far heat reaches at x on one side, about 1: the plate warms as the weld goes on, and never evenly. */
function heatSpread({ shape }: Bead, x: number, side: 0 | 1): number {
  const t = Math.min(1, Math.max(0, (x - shape.startMm) / (shape.endMm - shape.startMm)));
  return 0.76 + 0.44 * t ** 0.8 + 0.2 * fractalNoise1(x * 0.045, shape.seed + 51 + side, 3);
}

/** Writes closeness to the bead into the heat mask: 255 at the toe, 0 at HEAT_REACH_MM of an average place. */
function paintHeat(grid: HeightGrid, bead: Bead): void {
  const { shape } = bead;
  const half = (shape.rightMm - shape.leftMm) / 2;
  const middle = (shape.rightMm + shape.leftMm) / 2;
  for (let i = 0; i < grid.nx; i++) {
    const x = grid.x0 + i * grid.stepMm;
    const out = Math.max(shape.startMm + half - x, x - shape.endMm + half, 0);
    const toes = bead.toesAt(Math.min(shape.endMm - half, Math.max(shape.startMm + half, x)));
    const centre = toes === null ? middle : (toes.leftMm + toes.rightMm) / 2;
    const reach = toes === null ? half : (toes.rightMm - toes.leftMm) / 2;
    const spread = [heatSpread(bead, x, 0), heatSpread(bead, x, 1)] as const;
    for (let j = 0; j < grid.ny; j++) {
      const across = grid.y0 + j * grid.stepMm - centre;
      // From one side's reach to the other's within the bead, which hides it, and softly beyond its ends.
      const share = smoothstep(-reach, reach, across);
      const wide = spread[0] + (spread[1] - spread[0]) * share;
      const distance = (Math.sqrt(out * out + across * across) - reach) / wide;
      if (distance >= HEAT_REACH_MM) continue;
      raiseMask(grid.mask.heat, j * grid.nx + i, 1 - Math.max(0, distance) / HEAT_REACH_MM);
    }
  }
}
