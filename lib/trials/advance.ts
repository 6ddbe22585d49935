import { insideOf } from "@/lib/plan";
import { candidates } from "./candidates";
import { coded } from "./code";
import { loss } from "./expected-improvement";
import { courseOf, seek } from "./seek";
import { setupAt } from "./make-trial";
import { standing, type Standing } from "./standing";
import type { Observation, Trial } from "./trial";

/** A bead of a trial: its settings, the bead if it was begun, its reading if it was read. */
export interface TrialRun {
  readonly place: number;
  readonly at: readonly number[];
  readonly begun: boolean;
  readonly value: number | null;
  /** It was run with other settings than its point: nothing of it is waited for. */
  readonly off?: boolean;
}

/**
 * "run": the next bead is due. "read": beads were begun and wait for their reading. "enough": what further beads may
 * bring is small beside the scatter. "all-run": its beads are spent. "outside": the bead that is due lies outside the rows
 * known here, as one laid out elsewhere or long ago may; it is not proposed.
 */
export type Advice =
  | { readonly code: "run"; readonly at: readonly number[]; readonly place: number }
  | { readonly code: "read"; readonly places: readonly number[] }
  | { readonly code: "enough"; readonly gain: number }
  | { readonly code: "all-run" }
  | { readonly code: "outside"; readonly place: number };

/** A gain below so much of the noise is not worth a bead. Own estimate. */
export const WORTH = 0.2;
/** Beads that a trial runs at least before it says that it is enough, beyond those it begins with. Own estimate. */
const AT_LEAST_MORE = 2;

export const observed = (runs: readonly TrialRun[]): readonly Observation[] =>
  runs.flatMap(({ at, value }) => (value === null ? [] : [{ at, value }]));

/** What to do next. A trial that seeks proposes one bead at a time, once its first beads were begun. */
export function advance(trial: Trial, runs: readonly TrialRun[], among = candidates(trial)): Advice {
  const due = runs.find(({ begun }) => !begun);
  if (due)
    return insideOf(trial.base)?.(setupAt(trial, due.at))
      ? { code: "run", at: due.at, place: due.place }
      : { code: "outside", place: due.place };
  const waiting = runs.filter(({ value, off }) => value === null && !off);
  if (trial.way !== "seek" || runs.length >= trial.budget)
    return waiting.length > 0
      ? { code: "read", places: waiting.map(({ place }) => place) }
      : { code: "all-run" };
  const seen = observed(runs);
  const sought = seek(
    trial,
    seen,
    waiting.map(({ at }) => at),
    among,
  );
  if (sought === null) return { code: "read", places: waiting.map(({ place }) => place) };
  const first = trial.knobs.length === 1 ? 3 : 5;
  if (sought.gain < WORTH * trial.noise && runs.length >= first + AT_LEAST_MORE)
    return { code: "enough", gain: sought.gain };
  return { code: "run", at: sought.next, place: runs.length };
}

export interface CoursePoint {
  readonly at: readonly number[];
  readonly mean: number;
  /** The course itself lies between these with 95 %, if it runs as smoothly as was taken. */
  readonly low: number;
  readonly high: number;
  /** May be the best, as far as is known. */
  readonly mayBeBest: boolean;
}

export interface TrialState {
  readonly standing: Standing | null;
  readonly advice: Advice;
  /** Over every setting that may be set; empty with fewer than two beads read. */
  readonly course: readonly CoursePoint[];
  /** Where the course is believed to be best; null while nothing is known. A place to go on from, not a name for the best. */
  readonly best: CoursePoint | null;
}

const TWO = 1.959964;

/** Everything a trial knows from the beads that were read. */
export function trialState(trial: Trial, runs: readonly TrialRun[]): TrialState {
  const seen = observed(runs);
  const course = courseOf(trial, seen);
  const among = candidates(trial);
  const along =
    course === null
      ? []
      : among.map((at) => {
          const { mean, sd } = course.at(coded(trial.knobs, at));
          return { at, mean, low: mean - TWO * sd, high: mean + TWO * sd };
        });
  const best =
    along.length === 0
      ? null
      : along.reduce((a, b) => (loss(trial.aim, b.mean) < loss(trial.aim, a.mean) ? b : a));
  const surely = best === null ? Infinity : worstLoss(trial, best);
  const points = along.map((point) => ({ ...point, mayBeBest: bestLoss(trial, point) <= surely }));
  return {
    standing: standing(trial.aim, seen, trial),
    advice: advance(trial, runs, among),
    course: points,
    best: points.find(({ at }) => at === best?.at) ?? null,
  };
}

type Span = Pick<CoursePoint, "low" | "high">;
const worstLoss = ({ aim }: Trial, { low, high }: Span): number => Math.max(loss(aim, low), loss(aim, high));
const bestLoss = ({ aim }: Trial, { low, high }: Span): number =>
  aim.want === "target" && low <= aim.target! && high >= aim.target!
    ? 0
    : Math.min(loss(aim, low), loss(aim, high));
