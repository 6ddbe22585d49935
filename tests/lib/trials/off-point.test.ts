import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { offPoint, trialState, type TrialRun } from "@/lib/trials";
import { dialStep } from "@/lib/plan";
import { trialOf } from "./simulated";

const trial = trialOf(2);
const at = trial.points[0]!;

describe("a bead that was run with other settings than its point", () => {
  it("is told by each knob that stood more than a step of the dial away, and by nothing else", () => {
    fc.assert(
      fc.property(fc.constantFrom(0, 1), fc.integer({ min: -400, max: 400 }), (i, hundredths) => {
        const steps = hundredths / 100;
        fc.pre(Math.abs(Math.abs(steps) - 1) > 0.05);
        const { field } = trial.knobs[i]!;
        const value = at[i]! + steps * dialStep(trial.dials, field);
        const other = trial.knobs[1 - i]!.field;
        const setup = { ...trial.base, [field]: value, [other]: at[1 - i]! };
        expect(offPoint(trial, at, setup)).toEqual(Math.abs(steps) > 1 ? [{ field, value }] : []);
      }),
      { seed: 3, numRuns: 100 },
    );
  });

  it("is not told by what nobody said, nor by what the trial does not vary", () => {
    const open = { ...trial.base, travelSpeedMmPerMin: null, wireFeedMPerMin: null, volts: 40 };
    expect(offPoint(trial, at, open)).toEqual([]);
  });

  it("is not waited for: the series goes on", () => {
    const runs = trial.points.map((point, place): TrialRun => ({
      place,
      at: point,
      begun: true,
      value: place === 0 ? null : 6,
      off: place === 0,
    }));
    expect(trialState({ ...trial, budget: runs.length }, runs).advice).toEqual({ code: "all-run" });
    const waiting = runs.map((run) => ({ ...run, off: false }));
    expect(trialState({ ...trial, budget: runs.length }, waiting).advice.code).toBe("read");
  });
});

describe("a point outside the rows known here", () => {
  it("is never proposed, though an archive brought it", () => {
    const begun = (points: readonly (readonly number[])[]): readonly TrialRun[] =>
      points.map((point, place) => ({ place, at: point, begun: false, value: null }));
    const single = trialOf(1);
    const travel = single.knobs[0]!;
    expect(trialState(single, begun([[travel.low]])).advice.code).toBe("run");
    expect(trialState(single, begun([[20 * travel.high]])).advice).toEqual({ code: "outside", place: 0 });
    const hot = { ...single, base: { ...single.base, volts: 45 } };
    expect(trialState(hot, begun([[travel.low]])).advice).toEqual({ code: "outside", place: 0 });
  });
});
