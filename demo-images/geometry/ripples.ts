import { noise2 } from "../noise/noise";
import { createRandom } from "../noise/random";

export interface RippleShape {
  /** Mean spacing of the crescents, mm. */
  readonly pitchMm: number;
  /** Spread of the spacing, as a share of the mean: a hand is near 0.25, a tractor near 0.08 (own estimate). */
  readonly pitchSpread: number;
  readonly heightMm: number;
  /** How far the crescent's tail hangs back at the centre, in half-widths of the bead. */
  readonly lag: number;
  /** Fine freezing lines on the back of the coarse ones. */
  readonly finePitchMm: number;
  readonly fineHeightMm: number;
}

/** Crescent ripples as a height over (distance along the weld, place across it). */
export interface Ripples {
  /** mm; `u` runs from -1 at one toe to 1 at the other. */
  heightAt(xMm: number, u: number, halfWidthMm: number): number;
  /** Where along the weld each crescent's steep rear edge meets the centre line, mm. */
  readonly edgesMm: readonly number[];
}

const TABLE_STEP_MM = 0.05;

interface Train {
  readonly edges: number[];
  readonly heights: number[];
  readonly index: Uint16Array;
  readonly from: number;
}

function buildTrain(
  from: number,
  to: number,
  pitch: number,
  spread: number,
  height: number,
  seed: number,
): Train {
  const random = createRandom(seed);
  const edges = [from];
  const heights: number[] = [];
  while ((edges[edges.length - 1] as number) < to) {
    const step = pitch * Math.max(0.35, random.normal(1, spread));
    edges.push((edges[edges.length - 1] as number) + step);
    heights.push(height * Math.max(0.25, random.normal(1, 0.35)) * Math.sqrt(step / pitch));
  }
  const index = new Uint16Array(Math.ceil((to - from) / TABLE_STEP_MM) + 2);
  let at = 0;
  for (let k = 0; k < index.length; k++) {
    while (at + 2 < edges.length && (edges[at + 1] as number) <= from + k * TABLE_STEP_MM) at++;
    index[k] = at;
  }
  return { edges, heights, index, from };
}

/** One crescent: a steep rear edge, then a long easy fall to the next. */
function trainHeight(train: Train, x: number): number {
  const k = Math.max(0, Math.min(train.index.length - 1, Math.floor((x - train.from) / TABLE_STEP_MM)));
  let i = train.index[k] as number;
  if (i + 2 < train.edges.length && x >= (train.edges[i + 1] as number)) i++;
  const start = train.edges[i] as number;
  const t = Math.min(1, Math.max(0, (x - start) / ((train.edges[i + 1] as number) - start)));
  const rise = t < 0.25 ? t / 0.25 : 1;
  return (train.heights[i] ?? 0) * rise * rise * (3 - 2 * rise) * (1 - t) * (1.25 - 0.25 * t);
}

export function createRipples(shape: RippleShape, fromMm: number, toMm: number, seed: number): Ripples {
  const margin = 12;
  const coarse = buildTrain(
    fromMm - margin,
    toMm + margin,
    shape.pitchMm,
    shape.pitchSpread,
    shape.heightMm,
    seed,
  );
  const fine = buildTrain(
    fromMm - margin,
    toMm + margin,
    shape.finePitchMm,
    0.3,
    shape.fineHeightMm,
    seed + 7,
  );
  const wobble = 0.55 * shape.pitchMm;
  return {
    edgesMm: coarse.edges,
    heightAt(x, u, halfWidth) {
      const a = Math.abs(u);
      const tail = shape.lag * halfWidth * (a < 1 ? a * a * (0.75 + 0.25 * a) : a);
      const bend =
        wobble * noise2(x * 0.22, u * 1.7, seed + 11) + 0.16 * wobble * noise2(x * 1.3, u * 6, seed + 12);
      const place = x - tail + bend;
      const weight = 0.75 + 0.5 * noise2(x * 0.35, u * 2.3, seed + 13);
      return (trainHeight(coarse, place) * (1 - 0.35 * a * a) + trainHeight(fine, place)) * weight;
    },
  };
}
