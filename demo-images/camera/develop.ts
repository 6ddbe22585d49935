import { blurByDepth, blurRgb } from "./blur";
import type { Exposure } from "./expose";

/** What lens, sensor and phone do to the light. */
export interface Development {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly exposureEv: number;
  /** Error of the white balance: positive is too warm, 0.1 is a clear cast. */
  readonly warmth: number;
  readonly vignette: number;
  /** Standard deviation of the noise at mid-grey, in 8-bit levels. */
  readonly noise: number;
  readonly motionPx: number;
  /** 0 everything sharp; sigma in px per unit of |1/z - 1/zf| in 1/mm. */
  readonly defocusPxMm: number;
  readonly focusMm: number;
  /** Sigma of the lens, px. */
  readonly lensBlurPx: number;
  readonly bloom: number;
  readonly sharpen: number;
  readonly seed: number;
}

/** Between the geometric and the plain mean of the light over the middle of the picture: what the phone's meter sees. */
function meter(rgb: Float32Array, width: number, height: number): number {
  let sum = 0;
  let bright = 0;
  let count = 0;
  for (let y = Math.floor(height * 0.12); y < height * 0.88; y += 5) {
    for (let x = Math.floor(width * 0.12); x < width * 0.88; x += 5) {
      const k = 3 * (y * width + x);
      const light = 0.25 * rgb[k]! + 0.62 * rgb[k + 1]! + 0.13 * rgb[k + 2]!;
      sum += Math.log(0.004 + light);
      bright += Math.min(1, light);
      count++;
    }
  }
  return 0.35 * Math.exp(sum / count) + 0.65 * (bright / count) * 0.82;
}

/** Highlights bleed a little: what is far over white is spread by a wide blur and added back. */
function addBloom(rgb: Float32Array, width: number, height: number, white: number, amount: number): void {
  const cell = Math.max(2, Math.round(width / 700));
  const w = Math.ceil(width / cell);
  const h = Math.ceil(height / cell);
  const over = new Float32Array(3 * w * h);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const from = 3 * (y * width + x);
      const to = 3 * (((y / cell) | 0) * w + ((x / cell) | 0));
      for (let c = 0; c < 3; c++)
        over[to + c]! += Math.min(6 * white, Math.max(0, rgb[from + c]! - white)) / (cell * cell);
    }
  }
  blurRgb(over, w, h, 2.2);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const to = 3 * (y * width + x);
      const from = 3 * (((y / cell) | 0) * w + ((x / cell) | 0));
      for (let c = 0; c < 3; c++) rgb[to + c]! += amount * over[from + c]!;
    }
  }
}

/** Filmic curve on linear light, 1 is the level that comes out near white; then the sRGB transfer. 4096 entries up to 8. */
function toneTable(): Float32Array {
  const table = new Float32Array(4097);
  for (let i = 0; i <= 4096; i++) {
    const x = (i / 4096) ** 2 * 8;
    const toe = x * (x * 2.2 + 0.06);
    const y = Math.min(1, toe / (x * (x * 2.05 + 0.55) + 0.14));
    table[i] = 255 * (y <= 0.0031308 ? 12.92 * y : 1.055 * y ** (1 / 2.4) - 0.055);
  }
  return table;
}

function hashNoise(k: number, seed: number): number {
  let h = Math.imul(k, 0x9e3779b1) ^ seed;
  h = Math.imul(h ^ (h >>> 15), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  h ^= h >>> 16;
  return ((h & 1023) + ((h >>> 10) & 1023) + ((h >>> 20) & 1023)) / 1023 - 1.5;
}

/** Turns linear light into the 8-bit sRGB picture a phone would store. */
export function develop(exposure: Exposure, d: Development): Uint8Array {
  const { rgb, depth } = exposure;
  const { widthPx: width, heightPx: height } = d;
  const gain = (0.155 / meter(rgb, width, height)) * 2 ** d.exposureEv;
  if (d.defocusPxMm > 0) blurByDepth(rgb, depth, width, height, d.focusMm, d.defocusPxMm);
  if (d.bloom > 0) addBloom(rgb, width, height, 1.4 / gain, d.bloom);
  blurRgb(rgb, width, height, Math.hypot(d.lensBlurPx, d.motionPx * 0.4), d.lensBlurPx);
  const table = toneTable();
  const tone = (x: number): number => table[Math.min(4096, (Math.sqrt(Math.max(0, x) / 8) * 4096) | 0)]!;
  const balance = [gain * (1 + d.warmth), gain, gain * (1 - d.warmth)] as const;
  const levels = new Float32Array(3 * width * height);
  const r2max = (width * width + height * height) / 4;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const k = 3 * (y * width + x);
      const r2 = ((x - width / 2) ** 2 + (y - height / 2) ** 2) / r2max;
      const fall = 1 / (1 + d.vignette * r2) ** 2;
      for (let c = 0; c < 3; c++) levels[k + c] = tone(rgb[k + c]! * balance[c as 0 | 1 | 2] * fall);
    }
  }
  return quantise(levels, d);
}

/** Adds sensor noise, then the edge boost every phone applies, then rounds. */
function quantise(levels: Float32Array, d: Development): Uint8Array {
  const { widthPx: width } = d;
  const out = new Uint8Array(levels.length);
  const row = 3 * width;
  for (let k = 0; k < levels.length && d.noise > 0; k += 3) {
    const light = Math.max(12, levels[k + 1]!);
    const sigma = d.noise * (0.65 + 0.6 * Math.sqrt(90 / (light + 30)));
    const shared = hashNoise(k, d.seed);
    for (let c = 0; c < 3; c++)
      levels[k + c]! += sigma * (0.85 * shared + 0.6 * hashNoise(k + c + 1, d.seed + 7));
  }
  for (let k = 0; k < levels.length; k++) {
    let v = levels[k]!;
    if (d.sharpen > 0 && k > row + 3 && k < levels.length - row - 3) {
      const around = (levels[k - 3]! + levels[k + 3]! + levels[k - row]! + levels[k + row]!) / 4;
      v += d.sharpen * (v - around);
    }
    out[k] = v < 0 ? 0 : v > 255 ? 255 : v + 0.5;
  }
  return out;
}
