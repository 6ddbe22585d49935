import { describe, expect, it } from "vitest";
import { trialState, type TrialRun } from "@/lib/trials";
import { advance } from "@/lib/trials/advance";
import { inDepth } from "../../setup/in-depth";
import { oneAtATime, seeking, simulation, surfacing, trialOf } from "./simulated";

const trial = trialOf(1, { budget: 8 });
const runOf = (place: number, value: number | null, begun = true): TrialRun => ({
  place,
  at: trial.points[place]!,
  begun,
  value,
});

describe("what to do next in a trial", () => {
  it("is the next bead that was laid out", () => {
    expect(advance(trial, [runOf(0, 5), runOf(1, null, false), runOf(2, null, false)])).toEqual({
      code: "run",
      at: trial.points[1],
      place: 1,
    });
  });

  it("is reading what was run, where too little is known to propose", () => {
    expect(advance(trial, [runOf(0, 5), runOf(1, null), runOf(2, null)])).toEqual({
      code: "read",
      places: [1, 2],
    });
  });

  it("goes on while the last bead waits for its reading, which counts as believed", () => {
    const read = [runOf(0, 5), runOf(1, 6), runOf(2, 7)];
    const next = advance(trial, read);
    if (next.code !== "run") throw new Error(next.code);
    expect(next.place).toBe(3);
    const after = advance(trial, [...read, { place: 3, at: next.at, begun: true, value: null }]);
    expect(after).toMatchObject({ code: "run", place: 4 });
  });

  it("ends when its beads are spent, or when more would bring little", () => {
    const flat = (n: number): TrialRun[] =>
      Array.from({ length: n }, (_, place) => ({
        place,
        at: trial.points[place % 3]!,
        begun: true,
        value: 6,
      }));
    expect(advance(trial, flat(8)).code).toBe("all-run");
    const sure = { ...trial, noise: 0.001, budget: 30 };
    const bowl = Array.from({ length: 12 }, (_, i) => {
      const { low, high } = trial.knobs[0]!;
      const at = low + (i / 11) * (high - low);
      return { place: i, at: [at], begun: true, value: ((at - (low + high) / 2) / (high - low)) ** 2 };
    });
    expect(advance({ ...sure, noise: 0.2 }, bowl).code).toBe("enough");
  });
});

describe("what a trial knows", () => {
  it("names no place with fewer than two beads read", () => {
    expect(trialState(trial, [runOf(0, 5)])).toMatchObject({ course: [], best: null });
  });

  it("holds the true best in what may be best, in most of its series", () => {
    const seeds = inDepth(6, 200);
    let held = 0;
    for (let seed = 1; seed <= seeds; seed += 1) {
      const sim = simulation(1, "surface", seed, 8, 0.1);
      const runs = sim.trial.points.map((at, place) => ({
        place,
        at,
        begun: true,
        value: sim.truth(sim.x(at)) + 0.1 * sim.noise(),
      }));
      const { course } = trialState(sim.trial, runs);
      const best = sim.among.reduce((a, b) => (sim.truth(sim.x(b)) < sim.truth(sim.x(a)) ? b : a));
      if (course.find(({ at }) => at[0] === best[0])!.mayBeBest) held += 1;
    }
    expect(held / seeds).toBeGreaterThanOrEqual(0.9);
  });
});

describe("a series with a known best", () => {
  const seeds = Array.from({ length: inDepth(6, 300) }, (_, i) => i + 1);
  const near = (ends: readonly { short: number }[]): number =>
    ends.filter(({ short }) => short <= 0.1).length / ends.length;

  it("ends near it more often than one knob at a time does, with fewer beads or as many", () => {
    const sought = seeds.map((seed) => seeking(simulation(2, "seek", seed, 14, 0.05)));
    const laid = seeds.map((seed) => surfacing(simulation(2, "surface", seed, 14, 0.1)));
    const single = seeds.map((seed) => oneAtATime(simulation(2, "seek", seed, 14, 0.1), 14));
    expect(near(sought)).toBeGreaterThanOrEqual(0.85);
    expect(Math.max(...sought.map(({ spent }) => spent))).toBeLessThanOrEqual(14);
    expect(near(laid)).toBeGreaterThan(near(single));
  });
});
