/** Lattice noise: position in, number out, no state. Same position and seed, same number, on any worker. */

function latticeHash(ix: number, iy: number, seed: number): number {
  let h = Math.imul(ix, 0x27d4eb2d) ^ Math.imul(iy, 0x165667b1) ^ seed;
  h = Math.imul(h ^ (h >>> 15), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

const signed = (h: number): number => (h >>> 0) * 4.656612873077393e-10 - 1;

/** A number of its own in [-1, 1] for every lattice point. */
export const whiteNoise = (ix: number, iy: number, seed: number): number => signed(latticeHash(ix, iy, seed));

/** The eight directions a lattice point may slope in, by the low bits of its hash: looked up, because branching on
 * random bits costs more than all the rest of the noise. */
const slopeX = Float64Array.of(1, -1, 1, -1, 0.5, 0.5, -0.5, -0.5);
const slopeY = Float64Array.of(0.5, 0.5, -0.5, -0.5, 1, -1, 1, -1);

/** Gradient noise in about [-1, 1] over the plane (Perlin 1985, quintic 2002); one lattice cell is one unit. */
export function noise2(x: number, y: number, seed: number): number {
  const ix = Math.floor(x);
  const iy = Math.floor(y);
  const fx = x - ix;
  const fy = y - iy;
  const u = fx * fx * fx * (fx * (fx * 6 - 15) + 10);
  const v = fy * fy * fy * (fy * (fy * 6 - 15) + 10);
  const ha = latticeHash(ix, iy, seed) & 7;
  const hb = latticeHash(ix + 1, iy, seed) & 7;
  const hc = latticeHash(ix, iy + 1, seed) & 7;
  const hd = latticeHash(ix + 1, iy + 1, seed) & 7;
  const a = slopeX[ha]! * fx + slopeY[ha]! * fy;
  const b = slopeX[hb]! * (fx - 1) + slopeY[hb]! * fy;
  const c = slopeX[hc]! * fx + slopeY[hc]! * (fy - 1);
  const d = slopeX[hd]! * (fx - 1) + slopeY[hd]! * (fy - 1);
  return 1.35 * (a + (b - a) * u + (c - a) * v + (a - b - c + d) * u * v);
}

/** Smooth noise in about [-1, 1] along a line. */
export function noise1(x: number, seed: number): number {
  const ix = Math.floor(x);
  const f = x - ix;
  const u = f * f * (3 - 2 * f);
  const a = signed(latticeHash(ix, 0, seed));
  const b = signed(latticeHash(ix + 1, 0, seed));
  return a + (b - a) * u;
}

/** Sum of octaves, each half the size and about half the height of the one before; about [-1, 1]. */
export function fractalNoise2(x: number, y: number, seed: number, octaves: number): number {
  let sum = 0;
  let height = 1;
  let total = 0;
  let scale = 1;
  for (let i = 0; i < octaves; i++) {
    sum += height * noise2(x * scale + i * 17.3, y * scale - i * 9.1, seed + i * 101);
    total += height;
    height *= 0.55;
    scale *= 2.03;
  }
  return sum / total;
}

/** Sum of octaves along a line; about [-1, 1]. */
export function fractalNoise1(x: number, seed: number, octaves: number): number {
  let sum = 0;
  let height = 1;
  let total = 0;
  let scale = 1;
  for (let i = 0; i < octaves; i++) {
    sum += height * noise1(x * scale + i * 31.7, seed + i * 211);
    total += height;
    height *= 0.55;
    scale *= 2.07;
  }
  return sum / total;
}

/** Fractal noise turned into a soft-edged patch mask: 0 outside, 1 inside, `cover` about the share inside. */
export function patchMask(x: number, y: number, seed: number, cover: number, edge = 0.12): number {
  const level = (1 - 2 * cover) * 0.55;
  return smoothstep(level - edge, level + edge, fractalNoise2(x, y, seed, 4));
}

/** Hermite step from 0 at `low` to 1 at `high`. */
export function smoothstep(low: number, high: number, x: number): number {
  const t = Math.min(1, Math.max(0, (x - low) / (high - low)));
  return t * t * (3 - 2 * t);
}
