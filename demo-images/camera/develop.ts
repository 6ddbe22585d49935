import { addBloomTo, type BloomMap } from "./bloom";
import type { Development } from "./development";
import type { Exposure } from "./expose";
import { createBlurDown } from "./lens";

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

/** Turns a row of linear light into 8-bit sRGB levels with a fraction, in place. */
function createTone(d: Development, gain: number): (line: Float32Array, y: number) => void {
  const { widthPx: width, heightPx: height } = d;
  const table = toneTable();
  const balance = Float64Array.of(gain * (1 + d.warmth), gain, gain * (1 - d.warmth));
  const r2max = (width * width + height * height) / 4;
  return (line, y) => {
    const dy2 = (y - height / 2) ** 2;
    for (let x = 0; x < width; x++) {
      const dx = x - width / 2;
      const rim = 1 + (d.vignette * (dx * dx + dy2)) / r2max;
      const fall = 1 / (rim * rim);
      for (let c = 0; c < 3; c++) {
        const light = line[3 * x + c]! * balance[c]! * fall;
        line[3 * x + c] = table[Math.min(4096, (Math.sqrt(Math.max(0, light) / 8) * 4096) | 0)]!;
      }
    }
  };
}

/** Adds the sensor's noise to a row of levels; it depends on place and seed alone. */
function addNoise(line: Float32Array, d: Development, y: number): void {
  const base = 3 * y * d.widthPx;
  for (let k = 0; k < line.length; k += 3) {
    const light = Math.max(12, line[k + 1]!);
    const sigma = d.noise * (0.65 + 0.6 * Math.sqrt(90 / (light + 30)));
    const shared = hashNoise(base + k, d.seed);
    for (let c = 0; c < 3; c++)
      line[k + c]! += sigma * (0.85 * shared + 0.6 * hashNoise(base + k + c + 1, d.seed + 7));
  }
}

/** Applies the edge boost every phone applies to the middle row of three, and rounds into `out` at `to`. */
function sharpenRow(
  above: Float32Array,
  line: Float32Array,
  below: Float32Array,
  amount: number,
  out: Uint8Array,
  to: number,
): void {
  const last = line.length - 3;
  for (let k = 0; k < line.length; k++) {
    const left = line[k < 3 ? k : k - 3]!;
    const right = line[k >= last ? k : k + 3]!;
    const around = (left + right + above[k]! + below[k]!) / 4;
    const v = line[k]! + amount * (line[k]! - around);
    out[to + k] = v < 0 ? 0 : v > 255 ? 255 : v + 0.5;
  }
}

/**
 * Turns the light of rows `from` to `to` into the 8-bit sRGB picture a phone would store. The exposure must be blurred
 * along its rows already (`blurAcross`), and `gain` metered on it before that.
 */
export function developRows(
  exposure: Exposure,
  bloom: BloomMap,
  d: Development,
  gain: number,
  out: Uint8Array,
  from: number,
  to: number,
): void {
  const blurDown = createBlurDown(exposure, d);
  const tone = createTone(d, gain);
  const read = (y: number, line: Float32Array): Float32Array => {
    blurDown(y, line);
    if (d.bloom > 0) addBloomTo(line, bloom, y, d.bloom);
    tone(line, y);
    if (d.noise > 0) addNoise(line, d, y);
    return line;
  };
  const spare = (): Float32Array => new Float32Array(3 * d.widthPx);
  let above = read(Math.max(0, from - 1), spare());
  let line = read(from, spare());
  let free = spare();
  for (let y = from; y < to; y++) {
    const below = read(Math.min(d.heightPx - 1, y + 1), free);
    sharpenRow(above, line, below, d.sharpen, out, 3 * y * d.widthPx);
    free = above;
    above = line;
    line = below;
  }
}
