import { fail, ok, type Result } from "@/lib/base";
import { dialStep, insideOf, onDial, turnedRange } from "@/lib/plan";
import type { RunSetup } from "@/lib/setup";
import { decoded } from "./code";
import { firstPoints } from "./designs";
import { trialIssue, type TrialIssue } from "./issues";
import { TrialSchema, type Trial, type TrialRange } from "./trial";

export type TrialAsk = Omit<Trial, "schemaVersion" | "points">;

/** The set-up of a bead of a trial. */
export function setupAt({ base, knobs }: Pick<Trial, "base" | "knobs">, at: readonly number[]): RunSetup {
  const set = Object.fromEntries(knobs.map(({ field }, i) => [field, at[i]!]));
  // What followed from the dials on the bead before is read anew.
  return { ...base, amps: null, arcTimeS: null, ...set };
}

/** Fewer steps of the dial than these between the ends, and points would fall together. */
const FEWEST_STEPS = 4;
/** The ranges are drawn together towards their middle by so much at a time where a corner leaves the rows. */
const TIGHTER = 0.95;
const TIGHTEST = 0.3;

/**
 * A trial with its first points. All lie inside the wire's rows, the mains input and the plate's windows; where the corner
 * of two ranges does not, both are drawn together towards where the trial begins, and the trial holds what is left.
 */
export function makeTrial(ask: TrialAsk): Result<Trial, TrialIssue> {
  const parsed = TrialSchema.safeParse({ ...ask, points: [] });
  if (!parsed.success) return fail(trialIssue("not-understood"));
  const wrong = refusals(parsed.data);
  if (wrong.length > 0) return fail(...wrong);
  const { base, way, budget, seed, dials } = parsed.data;
  const inside = insideOf(base)!;
  for (let share = 1; share >= TIGHTEST; share *= TIGHTER) {
    const knobs = parsed.data.knobs.map((knob) => tightened(knob, base[knob.field]!, share, dials));
    if (knobs.some(({ field, low, high }) => high - low < FEWEST_STEPS * dialStep(dials, field) * 0.99))
      break;
    const points = firstPoints(way, knobs.length, budget, seed).map((x) =>
      decoded(knobs, x).map((value, i) => onDial(dials, knobs[i]!.field, value)),
    );
    if (
      cornersOf(knobs)
        .concat(points)
        .every((at) => inside(setupAt({ base, knobs }, at)))
    )
      return ok({ ...parsed.data, budget: Math.max(budget, points.length), knobs, points });
  }
  return fail(trialIssue("corners-outside"));
}

function refusals({ base, knobs, dials }: Trial): readonly TrialIssue[] {
  const inside = insideOf(base);
  if (inside === null) return [trialIssue("no-row")];
  const open = knobs.filter(({ field }) => base[field] === null);
  if (open.length > 0) return open.map(({ field }) => trialIssue("knob-open", field));
  if (!inside(base)) return [trialIssue("base-outside")];
  return knobs.flatMap(({ field, low, high }) => {
    const may = turnedRange(base, field, dials)!;
    const dust = 1e-6 * Math.max(1, may.high);
    if (low < may.low - dust || high > may.high + dust)
      return [trialIssue("range-outside", field, may.low, may.high)];
    return high - low < FEWEST_STEPS * dialStep(dials, field) * 0.99
      ? [trialIssue("range-narrow", field, may.low, may.high)]
      : [];
  });
}

/** A range drawn together towards where the trial begins, or towards its middle where that lies outside it. */
function tightened(knob: TrialRange, start: number, share: number, dials: Trial["dials"]): TrialRange {
  const { field, low, high } = knob;
  if (share === 1) return knob;
  const centre = start > low && start < high ? start : (low + high) / 2;
  return {
    field,
    low: onDial(dials, field, centre + share * (low - centre)),
    high: onDial(dials, field, centre + share * (high - centre)),
  };
}

const cornersOf = (knobs: readonly TrialRange[]): readonly (readonly number[])[] =>
  knobs.reduce<readonly (readonly number[])[]>(
    (corners, { low, high }) =>
      corners.flatMap((corner) => [
        [...corner, low],
        [...corner, high],
      ]),
    [[]],
  );
