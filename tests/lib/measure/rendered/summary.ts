import type { Reading, StudyCase } from "./study";

/** A share with its own 95 % interval (Wilson 1927). */
export interface Share {
  readonly share: number;
  readonly low: number;
  readonly high: number;
  readonly count: number;
}

export function wilson(hits: number, count: number): Share {
  const z = 1.96;
  const p = hits / count;
  const middle = (p + z ** 2 / (2 * count)) / (1 + z ** 2 / count);
  const half = (z / (1 + z ** 2 / count)) * Math.sqrt((p * (1 - p)) / count + z ** 2 / (4 * count ** 2));
  return { share: p, low: middle - half, high: middle + half, count };
}

/**
 * How often the stated interval held the truth. The figures of one photo share its tilt, lens and, with a disc, the toss
 * between two tilts, so they count for less than as many photos: the interval is that of the effective number of cases,
 * from the scatter between photos (Kish, Survey Sampling, 1965, design effect).
 */
export function coverage(
  cases: readonly Pick<StudyCase, "photo" | "stated" | "doubled">[],
  hand: "stated" | "doubled",
): Share {
  const photos = new Map<number, { hits: number; count: number }>();
  for (const one of cases) {
    const { hits, count } = photos.get(one.photo) ?? { hits: 0, count: 0 };
    photos.set(one.photo, { hits: hits + (one[hand].inside ? 1 : 0), count: count + 1 });
  }
  const hits = cases.filter((one) => one[hand].inside).length;
  const share = hits / cases.length;
  // All alike: nothing scatters.
  if (share === 0 || share === 1) return wilson(hits, cases.length);
  const scatter = [...photos.values()].reduce((sum, one) => sum + (one.hits - share * one.count) ** 2, 0);
  const between = (scatter * photos.size) / (photos.size - 1) / cases.length ** 2;
  const effect = Math.max(1, between / ((share * (1 - share)) / cases.length));
  const effective = cases.length / effect;
  return { ...wilson(share * effective, effective), count: cases.length };
}

/** Figures in millimetres that are lengths along the picture: bias and spread of areas would be of another unit. */
export const isLength = ({ figure }: StudyCase): boolean =>
  figure === "length" || figure === "width" || figure === "diameter";

export interface Errors {
  readonly biasMm: number;
  readonly spreadMm: number;
  readonly medianMm: number;
  /** Median of the smaller of error / 0.15 mm and error / 1 %: at most 1 keeps the promise. */
  readonly medianOfPromise: number;
}

export function lengthErrors(cases: readonly StudyCase[]): Errors {
  const lengths = cases.filter(isLength);
  const errors = lengths.map(({ stated }: { readonly stated: Reading }) => stated.error);
  const mean = errors.reduce((sum, one) => sum + one, 0) / errors.length;
  return {
    biasMm: mean,
    spreadMm: Math.sqrt(errors.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (errors.length - 1)),
    medianMm: median(errors.map(Math.abs)),
    medianOfPromise: median(
      lengths.map(({ stated, truth }) => Math.abs(stated.error) / Math.max(0.15, 0.01 * truth)),
    ),
  };
}

export function median(list: readonly number[]): number {
  const sorted = [...list].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? NaN;
}
