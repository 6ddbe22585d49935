import { coded, fitSurface, makeTrial, type Trial, type TrialRun, type Way } from "@/lib/trials";
import { advance } from "@/lib/trials/advance";
import { candidates } from "@/lib/trials/candidates";
import { loss } from "@/lib/trials/expected-improvement";
import { random } from "@/lib/trials/designs";
import { courseOf } from "@/lib/trials/seek";
import { turnedRange, PlanAskSchema, planRun } from "@/lib/plan";
import type { RunSetup } from "@/lib/setup";

/** A plan that a series can begin from: 0.9 mm self-shielded wire on a T-joint, 230 V. */
export const base: RunSetup = (() => {
  const planned = planRun(
    PlanAskSchema.parse({
      electrodeClass: "E71T-11",
      electrodeDiameterMm: 0.9,
      joint: "tee",
      position: "horizontal",
      thicknessMm: 5,
      inputPower: "230V",
    }),
  );
  if (!planned.ok) throw new Error("no plan");
  return planned.value.setup;
})();

const ranges = (["travelSpeedMmPerMin", "wireFeedMPerMin"] as const).map((field) => ({
  field,
  ...turnedRange(base, field)!,
}));

type Asked = Partial<Pick<Trial, "way" | "budget" | "seed" | "aim" | "noise">>;

/** A trial over the whole of the ranges of so many knobs. */
export function trialOf(knobs: 1 | 2, asked: Asked = {}): Trial {
  const made = makeTrial({
    title: "Leg by pace",
    base,
    knobs: ranges.slice(0, knobs),
    way: "seek",
    budget: 10,
    dials: "metric",
    seed: 7,
    aim: { response: "width", want: "least", target: null },
    noise: 0.5,
    ...asked,
  });
  if (!made.ok) throw new Error(made.issues[0]!.code);
  return made.value;
}

/** Normal numbers by Box and Muller. */
export function normals(seed: number): () => number {
  const next = random(seed);
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

/** A smooth course over coded knobs with one best place somewhere inside. */
export function bowl(knobs: number, seed: number): (x: readonly number[]) => number {
  const next = random(seed);
  const centre = Array.from({ length: knobs }, () => 1.4 * next() - 0.7);
  const steep = Array.from({ length: knobs }, () => 0.8 + 0.7 * next());
  const twist = knobs === 2 ? 1.2 * next() - 0.6 : 0;
  const skew = 0.5 * next();
  return (x) => {
    const d = x.map((v, i) => v - centre[i]!);
    const square = d.reduce((sum, v, i) => sum + steep[i]! * v * v, 0);
    return 8 + square + twist * (d[0]! * (d[1] ?? 0)) + skew * Math.sin(2 * x[0]!);
  };
}

export interface Ended {
  readonly spent: number;
  /** How far from the best the setting that it ends with truly is, as a share of all there is between best and worst. */
  readonly short: number;
}

interface Simulation {
  readonly trial: Trial;
  readonly truth: (x: readonly number[]) => number;
  readonly noise: () => number;
  readonly among: readonly (readonly number[])[];
  readonly x: (at: readonly number[]) => readonly number[];
}

const read = ({ trial, truth, noise }: Simulation, at: readonly number[]): number =>
  truth(coded(trial.knobs, at)) + trial.noise * noise();

function shortOf({ trial, truth, among }: Simulation, at: readonly number[]): number {
  const all = among.map((one) => loss(trial.aim, truth(coded(trial.knobs, one))));
  const [best, worst] = [Math.min(...all), Math.max(...all)];
  return (loss(trial.aim, truth(coded(trial.knobs, at))) - best) / (worst - best);
}

/** As the product runs it: one bead at a time, each as it is proposed, until it says that it is enough. */
export function seeking(sim: Simulation): Ended {
  const runs: TrialRun[] = sim.trial.points.map((at, place) => ({
    place,
    at,
    begun: true,
    value: read(sim, at),
  }));
  for (;;) {
    const advice = advance(sim.trial, runs, sim.among);
    if (advice.code !== "run") break;
    runs.push({ place: runs.length, at: advice.at, begun: true, value: read(sim, advice.at) });
  }
  return { spent: runs.length, short: shortOf(sim, believedBest(sim, runs)) };
}

function believedBest({ trial, among }: Simulation, runs: readonly TrialRun[]): readonly number[] {
  const course = courseOf(
    trial,
    runs.map(({ at, value }) => ({ at, value: value! })),
  )!;
  const lossAt = (at: readonly number[]) => loss(trial.aim, course.at(coded(trial.knobs, at)).mean);
  return among.reduce((a, b) => (lossAt(b) < lossAt(a) ? b : a));
}

/** A designed series, and the lowest point of the second-order surface through it. */
export function surfacing(sim: Simulation): Ended {
  const { trial, among } = sim;
  const points = trial.points.map((at) => coded(trial.knobs, at));
  const surface = fitSurface(
    points,
    trial.points.map((at) => read(sim, at)),
    2,
  )!;
  const lossAt = (at: readonly number[]) => loss(trial.aim, surface.predict(coded(trial.knobs, at)).value);
  return {
    spent: points.length,
    short: shortOf(
      sim,
      among.reduce((a, b) => (lossAt(b) < lossAt(a) ? b : a)),
    ),
  };
}

/** As most do it: one knob over its range, the best bead kept, then the next knob; the best bead of all counts. */
export function oneAtATime(sim: Simulation, beads: number): Ended {
  const { knobs, base: start } = sim.trial;
  let at = knobs.map(({ field }) => start[field]!);
  const each = Math.floor(beads / knobs.length);
  knobs.forEach((knob, i) => {
    const tried = Array.from({ length: each }, (_, step) => {
      const value = knob.low + ((step + 0.5) / each) * (knob.high - knob.low);
      const here = at.map((v, j) => (j === i ? value : v));
      return { here, loss: loss(sim.trial.aim, read(sim, here)) };
    });
    at = [...tried.reduce((a, b) => (b.loss < a.loss ? b : a)).here];
  });
  return { spent: each * knobs.length, short: shortOf(sim, at) };
}

/** `noise` as a share of what lies between the best and the worst setting. */
export function simulation(knobs: 1 | 2, way: Way, seed: number, budget: number, noise: number): Simulation {
  const trial = { ...keptTrial(knobs, way, budget), noise };
  const among = amongOf(knobs, trial);
  const course = bowl(knobs, seed);
  const all = among.map((at) => course(coded(trial.knobs, at)));
  const span = Math.max(...all) - Math.min(...all);
  return {
    trial,
    truth: (x) => course(x) / span,
    noise: normals(seed + 1_000_003),
    among,
    x: (at) => coded(trial.knobs, at),
  };
}

/** The check of a set-up is the slow part of making a trial, and it is the same one for every seed. */
const trials = new Map<string, Trial>();
function keptTrial(knobs: 1 | 2, way: Way, budget: number): Trial {
  const name = [knobs, way, budget].join();
  const made = trials.get(name) ?? trialOf(knobs, { way, budget });
  trials.set(name, made);
  return made;
}

const kept = new Map<number, readonly (readonly number[])[]>();
function amongOf(knobs: number, trial: Trial): readonly (readonly number[])[] {
  const made = kept.get(knobs) ?? candidates(trial);
  kept.set(knobs, made);
  return made;
}
