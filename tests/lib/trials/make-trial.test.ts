import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { askOfSetup, insideOf, planRun, PlanAskSchema, turnedRange } from "@/lib/plan";
import { checkSetup, exampleSetups, windowFor, windowQueryFor, type RunSetup } from "@/lib/setup";
import { voltsAtFeed } from "@/lib/trade";
import { makeTrial, setupAt, trialKnobs, type Trial, type TrialRun } from "@/lib/trials";
import { advance } from "@/lib/trials/advance";
import { ways } from "@/lib/trials/trial";
import { inDepth, itDeep } from "../../setup/in-depth";
import { base, normals, trialOf } from "./simulated";

/** Set-ups that a series may begin from: every example that has a plan, with both sockets. */
const bases: readonly RunSetup[] = exampleSetups.flatMap(({ setup }) =>
  [setup.inputPower, "230V" as const].flatMap((inputPower) => {
    const planned = planRun(PlanAskSchema.parse({ ...askOfSetup(setup), inputPower }));
    return planned.ok ? [planned.value.setup] : [];
  }),
);

function rangesOf(setup: RunSetup) {
  return trialKnobs.flatMap((field) => {
    const range = turnedRange(setup, field);
    return range === null || range.high <= range.low ? [] : [{ field, ...range }];
  });
}

const kept = new Map<RunSetup, ReturnType<typeof rangesOf>>();
function turnable(setup: RunSetup): ReturnType<typeof rangesOf> {
  const ranges = kept.get(setup) ?? rangesOf(setup);
  kept.set(setup, ranges);
  return ranges;
}

/** What is wrong with the dials of one bead, asked of the rows themselves and not of the room that made them. */
function outside(setup: RunSetup): readonly string[] {
  const window = windowFor(setup)!;
  const feed = setup.wireFeedMPerMin!;
  const volts = voltsAtFeed(windowQueryFor(setup)!, feed);
  const in_ = (value: number, band: { low: number; high: number } | null) =>
    band === null || (value >= band.low - 1e-6 && value <= band.high + 1e-6);
  return [
    ...(in_(feed, window.wireFeedMPerMin) ? [] : ["feed"]),
    ...(volts !== null && in_(setup.volts!, volts) ? [] : ["volts"]),
    ...(in_(setup.ctwdMm!, window.ctwdMm) ? [] : ["tip"]),
    ...checkSetup(setup)
      .filter(({ severity }) => severity !== "note")
      .map(({ code }) => code),
  ];
}

describe("a trial's points", () => {
  it("all lie in the wire's rows, under the mains and within the check, corners and proposals too", () => {
    expect(bases.length).toBeGreaterThan(6);
    let made = 0;
    fc.assert(
      fc.property(
        fc.constantFrom(...bases),
        fc.constantFrom(...ways),
        fc.constantFrom(1, 2),
        fc.integer({ min: 0, max: 1e6 }),
        (setup, way, count, seed) => {
          const all = turnable(setup);
          const first = seed % all.length;
          const knobs = [all[first]!, all[(first + 1) % all.length]!].slice(0, count);
          const trial = makeTrial({ ...(trialOf(1) as Trial), base: setup, knobs, way, budget: 9, seed });
          if (!trial.ok) return;
          made += 1;
          const normal = normals(seed);
          const runs: TrialRun[] = trial.value.points.map((at, place) => ({
            place,
            at,
            begun: true,
            value: 6 + normal(),
          }));
          const advice = advance(trial.value, runs);
          const points = [...trial.value.points, ...(advice.code === "run" ? [advice.at] : [])];
          for (const at of points) expect(outside(setupAt(trial.value, at))).toEqual([]);
        },
      ),
      { seed: 4, numRuns: inDepth(5, 120) },
    );
    expect(made).toBeGreaterThan(inDepth(2, 4));
  });

  itDeep("leave the rows where nobody draws the corners together: the fault that the law is for", () => {
    const corners = bases.flatMap((setup) => {
      const knobs = turnable(setup).filter(({ field }) => field === "wireFeedMPerMin" || field === "volts");
      if (knobs.length < 2) return [];
      return [setupAt({ base: setup, knobs }, [knobs[0]!.high, knobs[1]!.low])];
    });
    expect(corners.some((setup) => outside(setup).length > 0)).toBe(true);
  });

  it("are not made beyond a range that may be turned, or too near together to be set", () => {
    const { low, high } = turnedRange(base, "volts")!;
    const asked = (knob: { low: number; high: number }) =>
      makeTrial({ ...trialOf(1), knobs: [{ field: "volts", ...knob }] });
    expect(asked({ low, high: high + 1 })).toMatchObject({
      ok: false,
      issues: [{ code: "range-outside", high }],
    });
    expect(asked({ low, high: low + 0.2 })).toMatchObject({ ok: false, issues: [{ code: "range-narrow" }] });
    expect(makeTrial({ ...trialOf(1), base: { ...base, volts: 40 } })).toMatchObject({
      ok: false,
      issues: [{ code: "base-outside" }],
    });
    expect(makeTrial({ ...trialOf(1), base: { ...base, joint: null } })).toMatchObject({
      ok: false,
      issues: [{ code: "no-row" }],
    });
  });
});

describe("how far a dial may be turned", () => {
  it("ends one step before the rows do", () => {
    const inside = insideOf(base)!;
    for (const { field, low, high } of turnable(base)) {
      expect(inside({ ...base, [field]: low }), field).toBe(true);
      expect(inside({ ...base, [field]: high }), field).toBe(true);
    }
    const feed = turnedRange(base, "wireFeedMPerMin")!;
    expect(inside({ ...base, wireFeedMPerMin: feed.high + 0.1 })).toBe(false);
    expect(inside({ ...base, wireFeedMPerMin: feed.low - 0.1 })).toBe(false);
  });
});
