import type { GreyPatch } from "./types";

/** What each pixel says of an edge. */
export interface EdgeField {
  readonly columns: number;
  readonly rows: number;
  /** How strong the edge is, 0 nothing but grain to 1. */
  readonly strength: Float32Array;
  /** 1 where the light stops growing faster: the middle of an edge. */
  readonly crossing: Uint8Array;
  /** Unit vector along the edge, square to the gradient; 0, 0 where there is no gradient. */
  readonly alongX: Float32Array;
  readonly alongY: Float32Array;
}

/** Weights of a Gaussian of 1.5 pixels: narrower follows the grain of the steel, wider cuts the corners. */
const SMOOTH = [5, 4, 3, 2, 1, 0].map((off) => Math.exp(-(off * off) / (2 * 1.5 * 1.5)));
/** Grey levels a pixel: a gradient that stands out by less is taken for grain. */
const LEAST_RISE = 1.5;

/**
 * Gradient, its direction and the zero crossings of the Laplacian, all of the smoothed patch. Adding the same to every pixel
 * changes nothing. The strength is counted from the patch's median gradient, which is the grain of plate and bead, to its
 * hardest edges (one pixel in fifty): a glint would otherwise make every other edge a weak one.
 */
export function edgeField({ columns, rows, grey }: GreyPatch): EdgeField {
  const smooth = smoothed(grey, columns, rows);
  const count = columns * rows;
  const rise = new Float32Array(count);
  const alongX = new Float32Array(count);
  const alongY = new Float32Array(count);
  const bend = new Float32Array(count);
  for (let y = 0; y < rows; y++) {
    const [up, down] = [Math.max(0, y - 1) * columns, Math.min(rows - 1, y + 1) * columns];
    for (let x = 0; x < columns; x++) {
      const k = y * columns + x;
      const [left, right] = [y * columns + Math.max(0, x - 1), y * columns + Math.min(columns - 1, x + 1)];
      const gx = (smooth[right]! - smooth[left]!) / 2;
      const gy = (smooth[down + x]! - smooth[up + x]!) / 2;
      const size = Math.hypot(gx, gy);
      rise[k] = size;
      alongX[k] = size > NOTHING ? -gy / size : 0;
      alongY[k] = size > NOTHING ? gx / size : 0;
      bend[k] = smooth[left]! + smooth[right]! + smooth[up + x]! + smooth[down + x]! - 4 * smooth[k]!;
    }
  }
  const strength = strengths(rise);
  return { columns, rows, strength, crossing: crossings(bend, strength, columns), alongX, alongY };
}

/** Grey levels: rounding alone makes gradients smaller than this. */
const NOTHING = 1e-3;

function strengths(rise: Float32Array): Float32Array {
  const sorted = rise.toSorted();
  const grain = sorted[Math.floor(sorted.length / 2)]!;
  const hard = Math.max(sorted[Math.floor(0.98 * (sorted.length - 1))]! - grain, LEAST_RISE);
  return rise.map((size) => Math.min(1, Math.max(0, (size - grain) / hard)));
}

/** Where the Laplacian is nought, or changes its sign to a neighbour that is farther from it; only where there is an edge. */
function crossings(bend: Float32Array, strength: Float32Array, columns: number): Uint8Array {
  return Uint8Array.from(bend, (here, k) => {
    if (strength[k] === 0) return 0;
    const x = k % columns;
    const near = [
      x > 0 ? bend[k - 1] : undefined,
      x < columns - 1 ? bend[k + 1] : undefined,
      bend[k - columns],
      bend[k + columns],
    ];
    const turns = (there = 0) => here * there < 0 && Math.abs(here) <= Math.abs(there);
    return here === 0 || near.some(turns) ? 1 : 0;
  });
}

/** By rows, then by columns; beyond the edge the outermost pixel goes on. */
function smoothed(grey: GreyPatch["grey"], columns: number, rows: number): Float32Array {
  const half = Float32Array.from(grey);
  blur(grey, half, rows, columns, columns, 1);
  const whole = Float32Array.from(half);
  blur(half, whole, columns, rows, 1, columns);
  return whole;
}

function blur(
  from: GreyPatch["grey"],
  to: Float32Array,
  lines: number,
  long: number,
  next: number,
  step: number,
): void {
  const reach = SMOOTH.length - 1;
  const sum = SMOOTH.reduce((all, weight, i) => all + (i === reach ? weight : 2 * weight), 0);
  for (let line = 0; line < lines; line++)
    for (let i = 0; i < long; i++) {
      let value = SMOOTH[reach]! * from[line * next + i * step]!;
      for (let off = 1; off <= reach; off++) {
        const before = from[line * next + Math.max(0, i - off) * step]!;
        const behind = from[line * next + Math.min(long - 1, i + off) * step]!;
        value += SMOOTH[reach - off]! * (before + behind);
      }
      to[line * next + i * step] = value / sum;
    }
}
