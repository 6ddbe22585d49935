import { MM_PER_INCH } from "@/lib/base";

/** A way of dividing a rule: how far it is from line to line, and after how many lines longer ones come back. */
export interface Division {
  readonly id: "mm" | "half-mm" | "inch-16" | "inch-32";
  readonly pitchMm: number;
  /** From the longest lines to the shortest: every so many lines; the last is 1. */
  readonly every: readonly number[];
}

/** Longer lines at every half and whole centimetre, or at each halving of the inch: common practice, no source. */
export const divisions: readonly Division[] = [
  { id: "mm", pitchMm: 1, every: [10, 5, 1] },
  { id: "half-mm", pitchMm: 0.5, every: [20, 10, 2, 1] },
  { id: "inch-16", pitchMm: MM_PER_INCH / 16, every: [16, 8, 4, 2, 1] },
  { id: "inch-32", pitchMm: MM_PER_INCH / 32, every: [32, 16, 8, 4, 2, 1] },
];

/** One line of the rule: which one it is from the first that was seen, and how long, in pitches. */
export interface TickLength {
  readonly k: number;
  readonly length: number;
}

/** The pattern must account for this much of all that the lengths differ by. */
const LEAST_EXPLAINED = 0.7;
/** What the next best division leaves over must be this many times as much. */
const LEAST_AHEAD = 1.8;
/** A longer line is longer than the next class by this share of it at least. */
const LEAST_STEP = 0.06;
/** Periods of the longest lines that must be in sight. */
const LEAST_PERIODS = 2;

interface Fit {
  readonly division: Division;
  readonly left: number;
  readonly explained: number;
}

/**
 * Which division the lengths of the lines show, or null where none stands out: the lengths must fall into its classes, each
 * plainly longer than the next, and into no other's nearly as well.
 */
export function divisionOf(lengths: readonly TickLength[]): Division | null {
  const even = withoutTrend(lengths);
  const fits = divisions.flatMap((division) => bestFit(division, even) ?? []);
  const [best, next] = fits.sort((a, b) => a.left - b.left);
  if (best === undefined || best.explained < LEAST_EXPLAINED) return null;
  return next !== undefined && next.left < LEAST_AHEAD * best.left ? null : best.division;
}

/** Turns in which the line comes down to the short ones. */
const TURNS = 6;
/** A length this much above the line of the short ones is still a short one. */
const SHORT = 1.12;

/**
 * Lengths as shares of what a short line measures there: a slant, or an edge that bends, makes them grow along the rule.
 * The line of the short ones is fitted to all lengths, and again to those that are not far above it.
 */
function withoutTrend(lengths: readonly TickLength[]): readonly TickLength[] {
  let kept = lengths;
  let short = (_: number): number => 1;
  for (let turn = 0; turn < TURNS && kept.length > 2; turn++) {
    short = lineThrough(kept);
    kept = lengths.filter(({ k, length }) => length <= SHORT * short(k));
  }
  return lengths.map(({ k, length }) => ({ k, length: length / Math.max(0.05, short(k)) }));
}

function lineThrough(points: readonly TickLength[]): (k: number) => number {
  const n = points.length;
  const [km, lm] = [points.reduce((s, p) => s + p.k, 0) / n, points.reduce((s, p) => s + p.length, 0) / n];
  const [kk, kl] = points.reduce(
    ([a, b], p) => [a + (p.k - km) ** 2, b + (p.k - km) * (p.length - lm)] as const,
    [0, 0] as readonly [number, number],
  );
  return (k) => lm + (kk > 0 ? kl / kk : 0) * (k - km);
}

function bestFit(division: Division, lengths: readonly TickLength[]): Fit | null {
  const period = division.every[0]!;
  const ks = lengths.map(({ k }) => k);
  if (Math.max(...ks) - Math.min(...ks) < LEAST_PERIODS * period) return null;
  const all = lengths.map(({ length }) => length);
  const whole = squares(all);
  let best: Fit | null = null;
  for (let phase = 0; phase < period; phase++) {
    const classes = division.every.map((): number[] => []);
    for (const { k, length } of lengths)
      classes[division.every.findIndex((every) => (k + phase) % every === 0)]!.push(length);
    if (!steps(classes)) continue;
    const left = classes.reduce((sum, list) => sum + squares(list), 0);
    const fit = { division, left, explained: whole > 0 ? 1 - left / whole : 0 };
    if (best === null || left < best.left) best = fit;
  }
  return best;
}

/** Whether every class is there and plainly longer than the next. */
function steps(classes: readonly (readonly number[])[]): boolean {
  const means = classes.map((list) => (list.length < 2 ? NaN : middle(list)));
  return means.slice(1).every((mean, i) => means[i]! > (1 + LEAST_STEP) * mean);
}

const middle = (list: readonly number[]): number => [...list].sort((a, b) => a - b)[list.length >> 1]!;

/** Absolute distances from the median, which one odd line does not upset. */
function squares(list: readonly number[]): number {
  if (list.length === 0) return 0;
  const m = middle(list);
  return list.reduce((sum, one) => sum + Math.abs(one - m), 0);
}
