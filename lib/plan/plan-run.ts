import { ok, type Result, type Source } from "@/lib/base";
import {
  checkSetup,
  currentAt,
  electrodeOf,
  HAND_TRAVEL,
  isPositionOut,
  onePass,
  type RunSetup,
  type SetupFinding,
} from "@/lib/setup";
import { commonPractice, ownEstimate, remark } from "@/lib/trade";
import type { PlanAsk } from "./ask";
import type { FeedBounds } from "./bounds";
import type { Chosen } from "./choose";
import { draftRun } from "./draft-run";
import { givesOf, type Given } from "./gives";
import { inputPowerKw } from "./input-power";
import type { PlanIssue } from "./issues";
import { knobsOf, type Knob } from "./knobs";
import { handLimits, type Groove, type Size } from "./size";

export const limitCodes = [
  "feed-limited",
  "out-of-position",
  "passes-by-size",
  "passes-by-pace",
  "pace-fast",
  "pace-unusual",
  "limited-passes",
  "ask-the-machine",
] as const;
export type LimitCode = (typeof limitCodes)[number];

/** What holds a plan back. Numbers in the unit their name ends in. */
export interface Limit {
  readonly code: LimitCode;
  readonly data: Readonly<Record<string, string | number>>;
  readonly source: Source;
}

/** A starting set-up for scrap, never a procedure: the wire's data sheet and the qualified procedure govern. */
export interface Plan {
  /** Ready for a new bead; the current is left open, for it is read and not set. */
  readonly setup: RunSetup;
  readonly knobs: readonly Knob[];
  readonly gives: readonly Given[];
  readonly limits: readonly Limit[];
  /** What the check has to say beside it: cautions, and what the trade runs beyond the printed sheet. */
  readonly notes: readonly SetupFinding[];
  readonly passes: number;
  /** Leg aimed at, mm, and whether it was asked for; null where the joint has none. */
  readonly leg: { readonly mm: number; readonly asked: boolean } | null;
  readonly groove: Groove | null;
  readonly wantedAmps: number;
}

/** A plan for what is asked, or every reason why there is none. */
export function planRun(ask: PlanAsk): Result<Plan, PlanIssue> {
  const drafted = draftRun(ask);
  if (!drafted.ok) return drafted;
  const { bounds, size, chosen } = drafted.value;
  return ok({
    setup: chosen.setup,
    knobs: knobsOf(drafted.value, ask),
    gives: givesOf(chosen, size, ask),
    limits: limitsOf(chosen, bounds, size),
    notes: checkSetup(chosen.setup),
    passes: chosen.passes,
    leg: size.leg,
    groove: size.groove,
    wantedAmps: chosen.wantedAmps,
  });
}

/** A few layers are what a class with limited passes is meant for; the check of a set-up begins to speak there too. */
const FEW = 3;

function limitsOf(chosen: Chosen, bounds: FeedBounds, size: Size): readonly Limit[] {
  const { setup, passes, feedSetBy, wantedAmps, travelForSize } = chosen;
  const { slow, fast } = handLimits(setup);
  const travel = setup.travelSpeedMmPerMin!;
  const pass = onePass(setup);
  const limit = (code: LimitCode, source: Source, data: Limit["data"] = {}): Limit => ({
    code,
    data,
    source,
  });
  const end = [bounds.top, bounds.bottom].find(({ code }) => code === feedSetBy);
  return [
    ...(end
      ? [limit("feed-limited", end.source, { by: end.code, wantedAmps, feedMPerMin: end.feedMPerMin })]
      : []),
    ...(isPositionOut(setup) ? [limit("out-of-position", outSource)] : []),
    ...(passes > 1 && passes === size.leastPasses
      ? [limit("passes-by-size", pass.source, { passes, onePassMm: pass.mm })]
      : []),
    ...(passes > size.leastPasses
      ? [limit("passes-by-pace", HAND_TRAVEL.source, { passes, slowMmPerMin: slow })]
      : []),
    ...(size.leg?.asked !== false && travelForSize > fast * 1.01
      ? [limit("pace-fast", HAND_TRAVEL.source, { fastMmPerMin: fast })]
      : []),
    ...(travel < HAND_TRAVEL.low || travel > HAND_TRAVEL.high
      ? [
          limit("pace-unusual", HAND_TRAVEL.source, {
            travelMmPerMin: travel,
            low: HAND_TRAVEL.low,
            high: HAND_TRAVEL.high,
          }),
        ]
      : []),
    ...(passes > FEW && electrodeOf(setup)!.passes === "limited"
      ? [limit("limited-passes", electrodeOf(setup)!.source, { passes, electrode: electrodeOf(setup)!.id })]
      : []),
    ...beyondKnownPower(chosen),
  ];
}

/** Twice the volts carry about twice the power at the same fuse: beyond that the machine's own plate is asked. */
function beyondKnownPower({ setup }: Chosen): readonly Limit[] {
  const known = setup.inputPower === "230V" ? inputPowerKw("120V") : null;
  const kW = (setup.volts! * currentAt(setup)!.amps) / 1000;
  if (known === null || kW <= 2 * known.value) return [];
  return [{ code: "ask-the-machine", data: { kW, knownKw: 2 * known.value }, source: ownEstimate }];
}

const outSource = remark(commonPractice, "feed, volts and amps 30 to 40 % down from flat");
