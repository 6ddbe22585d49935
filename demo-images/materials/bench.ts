import { fractalNoise2, noise2, patchMask, smoothstep, whiteNoise } from "../noise/noise";
import { namedSeed } from "../noise/random";

export const benches = ["wood", "concrete", "paper", "steel-table", "rubber-mat"] as const;
export type Bench = (typeof benches)[number];

/** Diffuse reflectance of what the work lies on, linear RGB, at bench coordinates in mm. */
export type BenchColour = (x: number, y: number, out: Float32Array) => void;

function wood(seed: number): BenchColour {
  return (x, y, out) => {
    const board = Math.floor((y + 400) / 92);
    const inBoard = (y + 400) / 92 - board;
    const shift = board * 137.7;
    const warp = 9 * noise2(x * 0.006 + shift, y * 0.02, seed);
    const rings = noise2((x + shift) * 0.004, (y + warp) * 0.32, seed + board);
    const fibre = noise2((x + shift) * 0.05, y * 2.6, seed + 5);
    const tone = 0.9 + 0.32 * rings + 0.16 * fibre + 0.14 * fractalNoise2(x * 0.02, y * 0.02, seed + 6, 3);
    const stain = 1 - 0.6 * patchMask(x * 0.018, y * 0.018, seed + 7, 0.3, 0.25);
    const seam = smoothstep(0, 0.018, Math.min(inBoard, 1 - inBoard));
    const k = tone * stain * (0.15 + 0.85 * seam);
    out[0] = 0.25 * k;
    out[1] = 0.155 * k;
    out[2] = 0.085 * k;
  };
}

function concrete(seed: number): BenchColour {
  return (x, y, out) => {
    const cloud = fractalNoise2(x * 0.02, y * 0.02, seed, 4);
    const grit = noise2(x * 1.2, y * 1.2, seed + 3);
    const pit = patchMask(x * 0.35, y * 0.35, seed + 4, 0.06, 0.05);
    const k =
      (0.2 + 0.07 * cloud + 0.035 * grit) *
      (1 - 0.55 * pit) *
      (1 - 0.5 * patchMask(x * 0.012, y * 0.012, seed + 9, 0.25, 0.3));
    out[0] = k * 1.03;
    out[1] = k;
    out[2] = k * 0.94;
  };
}

function paper(seed: number): BenchColour {
  return (x, y, out) => {
    const k =
      0.62 + 0.02 * fractalNoise2(x * 0.05, y * 0.05, seed, 3) + 0.015 * noise2(x * 3, y * 3, seed + 2);
    const smudge = 1 - 0.35 * patchMask(x * 0.02, y * 0.022, seed + 3, 0.2, 0.35);
    const speck = 1 - 0.7 * patchMask(x * 0.8, y * 0.8, seed + 4, 0.03, 0.03);
    out[0] = k * smudge * speck;
    out[1] = k * smudge * speck * 0.985;
    out[2] = k * smudge * speck * 0.94;
  };
}

function steelTable(seed: number): BenchColour {
  return (x, y, out) => {
    const scratch = noise2(x * 0.05, y * 3, seed) * noise2(x * 0.02, y * 0.02, seed + 1);
    const cloud = fractalNoise2(x * 0.015, y * 0.015, seed + 2, 4);
    const burn = patchMask(x * 0.03, y * 0.03, seed + 3, 0.2, 0.2);
    const rust = patchMask(x * 0.02, y * 0.02, seed + 4, 0.3, 0.25);
    const k = (0.12 + 0.04 * cloud + 0.05 * scratch) * (1 - 0.6 * burn);
    out[0] = k * (1 + 0.5 * rust);
    out[1] = k * (1 + 0.05 * rust);
    out[2] = k * (1 - 0.25 * rust);
  };
}

function rubberMat(seed: number): BenchColour {
  return (x, y, out) => {
    const rib = 0.5 + 0.5 * Math.cos((y + 0.4 * noise2(x * 0.02, y * 0.02, seed)) * 1.6);
    const dust = patchMask(x * 0.05, y * 0.05, seed + 1, 0.35, 0.3);
    const k = 0.022 + 0.02 * rib + 0.05 * dust + 0.008 * noise2(x * 2, y * 2, seed + 2);
    out[0] = k;
    out[1] = k * 0.98;
    out[2] = k * 0.95;
  };
}

const CELL_MM = 8;

/** Crumbs of slag and cut-off bits lie on every bench where beads are chipped; each with its own small shadow. */
function withCrumbs(bench: BenchColour, seed: number): BenchColour {
  const place = (i: number, j: number, n: number): number => 0.5 + 0.5 * whiteNoise(i, j, seed + n);
  return (x, y, out) => {
    bench(x, y, out);
    const i0 = Math.floor(x / CELL_MM);
    const j0 = Math.floor(y / CELL_MM);
    if (place(i0, j0, 0) > 0.2) return;
    const dx = x - (i0 + 0.3 + 0.4 * place(i0, j0, 1)) * CELL_MM;
    const dy = y - (j0 + 0.3 + 0.4 * place(i0, j0, 2)) * CELL_MM;
    const radius = 0.2 + 1.1 * place(i0, j0, 3) ** 4;
    const ragged = 1 + 0.4 * noise2((1.1 * dx) / radius + i0, (1.1 * dy) / radius + j0, seed + 21);
    const shadow = smoothstep(1.7, 0.6, Math.hypot(dx - 0.45 * radius, dy + 0.45 * radius) / radius);
    const body = smoothstep(1.05, 0.9, (Math.hypot(dx, dy) / radius) * ragged);
    const lit = Math.max(0.25, 1 + 0.55 * ((dy - dx) / radius) + 0.3 * noise2(dx * 4, dy * 4, seed + 22));
    const tone = (0.03 + 0.05 * place(i0, j0, 4)) * lit;
    for (let c = 0; c < 3; c++)
      out[c] = out[c]! * (1 - 0.6 * shadow) * (1 - body) + body * tone * (1.06 - 0.1 * c);
  };
}

export function createBench(bench: Bench, seed: number): BenchColour {
  return withCrumbs(bareBench(bench, seed), namedSeed(seed, "crumbs"));
}

function bareBench(bench: Bench, seed: number): BenchColour {
  switch (bench) {
    case "wood":
      return wood(seed);
    case "concrete":
      return concrete(seed);
    case "paper":
      return paper(seed);
    case "steel-table":
      return steelTable(seed);
    case "rubber-mat":
      return rubberMat(seed);
  }
}
