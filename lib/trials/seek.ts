import { candidates } from "./candidates";
import { coded } from "./code";
import { expectedImprovement, loss } from "./expected-improvement";
import { fittedProcess, type Believed } from "./gaussian-process";
import { fitSurface, type Surface } from "./surface";
import type { Observation, Trial } from "./trial";

export interface Sought {
  /** The setting to run next, and by how much it may be expected to beat the best so far, in the response's unit. */
  readonly next: readonly number[];
  readonly gain: number;
  /** Where the course is believed to be best now. */
  readonly best: readonly number[];
}

/** The course of the response as it is believed to run. */
export interface Course {
  readonly at: (x: readonly number[]) => Believed;
}

/**
 * A designed series is read by the surface it was laid out for, of the second order; a series that seeks, or one that
 * is not far enough for a surface, by a Gaussian process. null with fewer than two beads.
 */
export function courseOf(
  trial: Pick<Trial, "knobs" | "noise" | "way">,
  seen: readonly Observation[],
): Course | null {
  if (seen.length < 2) return null;
  const points = seen.map(({ at }) => coded(trial.knobs, at));
  const values = seen.map(({ value }) => value);
  const surface = trial.way === "seek" ? null : surfaceOf(points, values);
  if (surface === null) return fittedProcess(points, values, trial.noise);
  const scatter = Math.max(trial.noise, surface.s ?? 0);
  return {
    at: (x) => ({ mean: surface.predict(x).value, sd: scatter * Math.sqrt(surface.leverage(x)) }),
  };
}

/** Of the second order, with a bead to spare: a flat surface through a few beads would hide how little they say. */
function surfaceOf(points: readonly (readonly number[])[], y: readonly number[]): Surface | null {
  const made = fitSurface(points, y, 2);
  return made !== null && made.degrees > 0 ? made : null;
}

/**
 * The next point by expected improvement, against the best that the course is believed to reach where beads were run: a
 * single lucky bead is no mark to beat. Beads that were begun and not read yet count as if they had come out as believed.
 */
export function seek(
  trial: Pick<Trial, "base" | "knobs" | "dials" | "noise" | "aim" | "way">,
  seen: readonly Observation[],
  begun: readonly (readonly number[])[] = [],
  among: readonly (readonly number[])[] = candidates(trial),
): Sought | null {
  const first = courseOf(trial, seen);
  if (first === null || among.length === 0) return null;
  const believedOf = (course: Course, at: readonly number[]) => course.at(coded(trial.knobs, at));
  const lossAt = (at: readonly number[]): number => loss(trial.aim, believedOf(first, at).mean);
  const best = among.reduce((a, b) => (lossAt(b) < lossAt(a) ? b : a));
  const supposed = begun.map((at) => ({ at, value: believedOf(first, at).mean }));
  const course = supposed.length === 0 ? first : courseOf(trial, [...seen, ...supposed])!;
  const reached = Math.min(
    ...[...seen, ...supposed].map(({ at }) => loss(trial.aim, believedOf(course, at).mean)),
  );
  const gainAt = (at: readonly number[]): number =>
    expectedImprovement(trial.aim, believedOf(course, at), reached);
  const gains = among.map((at) => ({ at, gain: gainAt(at) }));
  const { at: next, gain } = gains.reduce((a, b) => (b.gain > a.gain ? b : a));
  return { next, gain, best };
}
