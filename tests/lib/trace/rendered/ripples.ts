import type { FaceStrip } from "./face-strip";
import { wave, waveReach, type Wave } from "./wave";
import type { Point } from "@/lib/geometry";

/** The rhythm of a bead's ripples along its middle, as far as it was read. */
export interface Ripples {
  /** The middle of the bead where the reading begins and ends, photo pixels. */
  readonly from: Point<"photo">;
  readonly to: Point<"photo">;
  /** Spacings between those, not whole: the length over the mean spacing. */
  readonly count: number;
  /** Standard uncertainty of the count and so of the spacing, a share of it. */
  readonly share: number;
}

/**
 * How far the rhythm must stand out of what lies about it, how alike neighbouring rows must be in it (over a few ripples with any
 * shift, and over the whole length with one shift, as crescents are and chance is not), and what is left
 * uncertain of a spacing. Settled on renders of joints of the training, and tried on others
 * (`npm run -s study -- trace ripples`). Own figures of renders.
 */
export const rippleRules = { leastStand: 1, leastAlike: 0.58, leastSteady: 0.4, share: 0.09 } as const;

/** Spacings looked at: from this share of the width to that, each so much longer than the one before. */
const SHORTEST = 0.04;
const LONGEST = 0.5;
const LONGER = 1.08;
/** Fewer columns to a ripple are no ripple, fewer ripples no rhythm. */
const LEAST_COLUMNS = 4;
const LEAST_RIPPLES = 8;
/** Every so many rows one is looked at; a crescent runs through neighbours a little shifted. */
const ROW_GAP = 3;

/**
 * The spacing of the ripples of an unrolled face: the rhythm that neighbouring rows share and that stands out of the light's
 * own slow changes. Null where none plainly does. How even ripples are is not read: the rhythm's sharpness said nothing of it.
 *
 * A try that the product does not use: on renders kept apart too few were read, and of those too many beside what was stated.
 */
export function ripplesOf(face: FaceStrip): Ripples | null {
  const looks = rhythms(face);
  const best = plainest(looks);
  if (best === null || !isPlain(best)) return null;
  return {
    from: face.at(0),
    to: face.at(face.columns),
    count: face.columns / best.columns,
    share: rippleRules.share,
  };
}

const isPlain = ({ stand, alike, steady }: Peak): boolean =>
  stand >= rippleRules.leastStand && alike >= rippleRules.leastAlike && steady >= rippleRules.leastSteady;

/** How strong a rhythm of so many columns is in the face. */
export interface Rhythm {
  readonly columns: number;
  /** Logarithm of its power in what neighbouring rows share, steep light taken out. */
  readonly power: number;
  /** Share of its power in which neighbouring rows are alike. */
  readonly alike: number;
  /** The same where the shift from row to row is one for the whole length. */
  readonly steady: number;
}

function rhythms(face: FaceStrip): readonly Rhythm[] {
  const lines = levelled(face);
  const out: Rhythm[] = [];
  const first = Math.max(LEAST_COLUMNS, SHORTEST * face.widthColumns);
  const last = Math.min(LONGEST * face.widthColumns, face.columns / LEAST_RIPPLES);
  for (let columns = first; columns < last; columns *= LONGER) out.push(rhythmAt(lines, columns));
  return out;
}

function rhythmAt(lines: readonly Float32Array[], columns: number): Rhythm {
  const waves = lines.map((line) => wave(line, columns));
  const margin = waveReach(columns);
  let [shared, steady, whole] = [0, 0, 0];
  for (let i = 1; i < waves.length; i++) {
    const pair = likeness(waves[i - 1]!, waves[i]!, margin, Math.max(2, Math.round(4 * columns)));
    shared += pair.shared;
    steady += pair.steady;
    whole += pair.whole;
  }
  const alike = shared / Math.max(1e-12, whole);
  const length = Math.max(1, lines[0]!.length - 2 * margin);
  // Light that changes slowly has a power that grows with the spacing or faster: it makes no peak once divided by it.
  const power =
    Math.log(Math.max(1e-12, shared) / length) + 2 * Math.log(Math.max(1e-6, alike)) - Math.log(columns);
  return { columns, power, alike, steady: steady / Math.max(1e-12, whole) };
}

interface Likeness {
  readonly shared: number;
  readonly steady: number;
  readonly whole: number;
}

/** Over windows that overlap by half: how much of two rows' waves runs in step, whatever their shift, and how much there is. */
function likeness(a: Wave, b: Wave, margin: number, window: number): Likeness {
  const end = a.re.length - margin;
  let [shared, whole, steadyRe, steadyIm] = [0, 0, 0, 0];
  for (let from = margin; from < end; from += window >> 1) {
    let [re, im] = [0, 0];
    for (let x = from; x < Math.min(end, from + window); x++) {
      const [p, q, r, s] = [a.re[x]!, a.im[x]!, b.re[x]!, b.im[x]!];
      re += p * r + q * s;
      im += q * r - p * s;
      whole += (p * p + q * q + r * r + s * s) / 2;
    }
    shared += Math.hypot(re, im);
    steadyRe += re;
    steadyIm += im;
  }
  return { shared, steady: Math.hypot(steadyRe, steadyIm), whole };
}

/** Every third row less its mean over a width, its light pressed together so that pores and glare weigh no more than ripples. */
function levelled({ rows, columns, light, widthColumns }: FaceStrip): readonly Float32Array[] {
  const half = Math.round(widthColumns / 2);
  const lines: Float32Array[] = [];
  for (let row = 0; row < rows; row += ROW_GAP) {
    const line = light.subarray(row * columns, (row + 1) * columns);
    const mean = runningMean(line, half);
    const off = line.map((v, i) => v - mean[i]!);
    const usual = runningMean(off.map(Math.abs), 2 * half);
    lines.push(off.map((v, i) => v / (Math.abs(v) + usual[i]! + LEAST_CONTRAST)));
  }
  return lines;
}

/** A hundredth of full light: less is the camera's own noise. */
const LEAST_CONTRAST = 0.004;

function runningMean(line: Float32Array, reach: number): Float32Array {
  const sums = new Float64Array(line.length + 1);
  line.forEach((v, i) => (sums[i + 1] = sums[i]! + v));
  return line.map((_, i) => {
    const [a, b] = [Math.max(0, i - reach), Math.min(line.length, i + reach + 1)];
    return (sums[b]! - sums[a]!) / (b - a);
  });
}

/** A peak of the rhythms with how far it stands above the lower of both valleys beside it. */
interface Peak {
  readonly columns: number;
  readonly stand: number;
  readonly alike: number;
  readonly steady: number;
}

/** The peak that stands out most; null where the power has none. */
export function plainest(looks: readonly Rhythm[]): Peak | null {
  const power = looks.map((one) => one.power);
  let best: Peak | null = null;
  for (let i = 2; i + 2 < power.length; i++) {
    const here = power[i]!;
    if (here < power[i - 1]! || here < power[i + 1]!) continue;
    const stand = here - Math.max(valley(power, i, -1), valley(power, i, 1));
    if (best !== null && stand <= best.stand) continue;
    // The top between three points by a parabola.
    const bend = power[i - 1]! - 2 * here + power[i + 1]!;
    const off = bend < 0 ? (0.5 * (power[i - 1]! - power[i + 1]!)) / bend : 0;
    best = {
      columns: looks[i]!.columns * LONGER ** off,
      stand,
      alike: looks[i]!.alike,
      steady: looks[i]!.steady,
    };
  }
  return best;
}

/** The lowest place on the way from a peak to something higher, or to the end. */
function valley(power: readonly number[], peak: number, step: 1 | -1): number {
  let least = power[peak]!;
  for (let i = peak + step; i >= 0 && i < power.length && power[i]! <= power[peak]!; i += step)
    least = Math.min(least, power[i]!);
  return least;
}
