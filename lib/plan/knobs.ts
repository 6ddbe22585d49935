import type { Source } from "@/lib/base";
import { HAND_TRAVEL, usualWindow, windowQueryFor, type NumberField, type RunSetup } from "@/lib/setup";
import { linesAtFeed, ownEstimate, together, voltsAtFeed, withoutDocument } from "@/lib/trade";
import type { PlanAsk } from "./ask";
import type { FeedBounds } from "./bounds";
import type { Chosen, FeedSetBy } from "./choose";
import { dialled, type Dialled } from "./dial";
import type { Draft } from "./draft-run";
import { objections } from "./gate";
import { feedRange, workAngleRangeDeg, plateShares } from "./tables/figures";
import type { Model } from "./model";
import { handLimits, type Size } from "./size";

export type KnobField = Extract<
  NumberField,
  | "wireFeedMPerMin"
  | "volts"
  | "ctwdMm"
  | "gasFlowLPerMin"
  | "travelAngleDeg"
  | "workAngleDeg"
  | "travelSpeedMmPerMin"
>;
export const knobReasons = [
  "plate",
  "surface",
  "hand",
  "row-top",
  "amps-top",
  "input-top",
  "input-power",
  "plate-hot",
  "row-bottom",
  "amps-bottom",
  "plate-cold",
  "goes-with-feed",
  "rows",
  "splits-joint",
  "leaves-leg",
  "fills-groove",
  "usual-pace",
  "hand-slow",
  "hand-fast",
] as const;
export type KnobReason = (typeof knobReasons)[number];

/** One number to set: where to start, how far it may be turned by itself, and why. */
export interface Knob {
  readonly field: KnobField;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly reason: KnobReason;
  readonly source: Source;
}

type Band = { readonly low: number; readonly high: number };

/** The knobs in the order they are set. Each may be turned to either end by itself and the check has nothing to say. */
export function knobsOf({ model, bounds, size, chosen }: Draft, ask: PlanAsk): readonly Knob[] {
  const { setup } = chosen;
  const feed = setup.wireFeedMPerMin!;
  const query = windowQueryFor(setup)!;
  const { window } = model;
  const here = linesAtFeed(query, feed).map(({ line }) => line.source);
  const volts = voltsAtFeed(query, feed)!;
  const feedBand = {
    low: Math.max(bounds.bottom.feedMPerMin, feed * (1 - feedRange.value)),
    high: Math.min(bounds.top.feedMPerMin, feed * (1 + feedRange.value)),
  };
  const work = setup.workAngleDeg!;
  const flow = window.gasFlowLPerMin ?? usualWindow(setup).gasFlowLPerMin ?? null;
  const knob = knobMaker(setup, ask);
  return [
    knob("wireFeedMPerMin", feedBand, chosen.feedSetBy, feedSource(chosen.feedSetBy, bounds, model, here)),
    knob("volts", volts, "goes-with-feed", volts.source),
    knob("ctwdMm", window.ctwdMm!, "rows", window.ctwdMm!.source),
    ...(setup.gasFlowLPerMin === null || flow === null
      ? []
      : [knob("gasFlowLPerMin", flow, "rows", flow.source)]),
    ...(window.travelAngleDeg === null || setup.travelAngleDeg === null
      ? []
      : [knob("travelAngleDeg", window.travelAngleDeg, "rows", window.travelAngleDeg.source)]),
    knob(
      "workAngleDeg",
      { low: work - workAngleRangeDeg.value, high: work + workAngleRangeDeg.value },
      "splits-joint",
      workAngleRangeDeg.source,
    ),
    travelKnob(knob, size, chosen),
  ];
}

type KnobMaker = (field: KnobField, band: Band, reason: KnobReason, source: Source) => Knob;

/** Shrinks a band towards the start until the check is silent at its ends, and rounds those to the dial. */
function knobMaker(setup: RunSetup, ask: PlanAsk): KnobMaker {
  return (field, band, reason, source) => {
    const value = setup[field]!;
    const [low, high] = [Math.min(band.low, value), Math.max(band.high, value)];
    return {
      field,
      value,
      low: silentEnd(setup, ask, field, low),
      high: silentEnd(setup, ask, field, high),
      reason,
      source,
    };
  };
}

function silentEnd(setup: RunSetup, ask: PlanAsk, field: KnobField, end: number): number {
  const value = setup[field]!;
  const at = (share: number): number => {
    const turned = value + share * (end - value);
    const inside = end < value ? ([turned, value] as const) : ([value, turned] as const);
    return field === "workAngleDeg" ? turned : dialled(ask, field satisfies Dialled, turned, ...inside);
  };
  const silent = (share: number) => objections({ ...setup, [field]: at(share) }).length === 0;
  if (silent(1)) return at(1);
  let [good, bad] = [0, 1];
  for (let i = 0; i < 5; i += 1) {
    const middle = (good + bad) / 2;
    if (silent(middle)) good = middle;
    else bad = middle;
  }
  return at(good);
}

function feedSource(by: FeedSetBy, bounds: FeedBounds, model: Model, here: readonly Source[]): Source {
  if (by === bounds.top.code) return bounds.top.source;
  if (by === bounds.bottom.code && by !== "plate-cold") return bounds.bottom.source;
  if (by === "hand") return HAND_TRAVEL.source;
  if (by === "plate-cold") return plateShares.source;
  return together([...here, model.at(bounds.bottom.feedMPerMin)?.current.source ?? ownEstimate]);
}

function travelKnob(knob: KnobMaker, size: Size, { setup, passes, travelForSize }: Chosen): Knob {
  const { slow, fast } = handLimits(setup);
  const balance = withoutDocument("mass balance of wire and bead", "derived");
  const { low, high } = size.travel(setup.wireFeedMPerMin!, passes);
  const band = { low: Math.max(slow, low), high: Math.min(fast, high) };
  if (size.kind === "surface") return knob("travelSpeedMmPerMin", band, "usual-pace", HAND_TRAVEL.source);
  if (size.leg?.asked === false && travelForSize > HAND_TRAVEL.high)
    return knob("travelSpeedMmPerMin", HAND_TRAVEL, "usual-pace", HAND_TRAVEL.source);
  if (travelForSize > fast) return knob("travelSpeedMmPerMin", band, "hand-fast", HAND_TRAVEL.source);
  if (travelForSize < slow) return knob("travelSpeedMmPerMin", band, "hand-slow", HAND_TRAVEL.source);
  const why = size.kind === "fillet" ? "leaves-leg" : "fills-groove";
  return knob("travelSpeedMmPerMin", band, why, balance);
}
