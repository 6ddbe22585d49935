import { clamp } from "@/lib/numeric";
import {
  HAND_TRAVEL,
  isPositionOut,
  OUT_OF_POSITION_SHARE,
  usualWindow,
  windowQueryFor,
  type RunSetup,
} from "@/lib/setup";
import { ampsForThickness, AMPS_RULE_MAX_MM, voltsAtFeed } from "@/lib/trade";
import type { PlanAsk } from "./ask";
import { rowEnds, type FeedBounds } from "./bounds";
import { dialled } from "./dial";
import { feedWhere, type Model } from "./model";
import { handLimits, type Size } from "./size";
import { stainlessShare, surfacingShare } from "./tables/figures";

/** What set the feed. */
export type FeedSetBy =
  | "plate"
  | "surface"
  | "hand"
  | FeedBounds["top"]["code"]
  | FeedBounds["bottom"]["code"];

export interface Chosen {
  readonly setup: RunSetup;
  readonly passes: number;
  readonly feedSetBy: FeedSetBy;
  /** What the plate would want, A. */
  readonly wantedAmps: number;
  /** Travel that leaves the size exactly, mm/min; the hand may not be asked for it. */
  readonly travelForSize: number;
}

/** The amperes to aim at: the plate's rule, less out of position, less on a surface. The stronger reduction counts. */
export function wantedAmps(setup: RunSetup, kind: Size["kind"]): number {
  const rule = ampsForThickness(Math.min(setup.thicknessMm!, AMPS_RULE_MAX_MM))!;
  const place = isPositionOut(setup) ? OUT_OF_POSITION_SHARE : 1;
  const metal = setup.baseMetal === "stainless" ? stainlessShare.value : 1;
  return rule.amps * Math.min(place, kind === "surface" ? surfacingShare.value : 1, metal);
}

/** Amperes nobody sets. */
const WITHIN_A = 1;

/** Every dial and what the hand does, from the plate's demand down; all of it inside the bounds. */
export function choose(model: Model, bounds: FeedBounds, size: Size, ask: PlanAsk): Chosen {
  const { setup, window } = model;
  const wanted = wantedAmps(setup, size.kind);
  const feed = chooseFeed(model, bounds, size, ask, wanted);
  const at = model.at(feed.mPerMin)!;
  const volts = voltsAtFeed(windowQueryFor(setup)!, feed.mPerMin)!;
  const travelForSize = size.travel(feed.mPerMin, feed.passes).value;
  const { slow, fast } = handLimits(setup);
  const fastest = isAsking(size) ? fast : HAND_TRAVEL.high;
  const travel = clamp(travelForSize, slow, fastest);
  return {
    setup: {
      ...setup,
      wireFeedMPerMin: feed.mPerMin,
      volts: dialled(ask, "volts", at.volts, volts.low, volts.high),
      ctwdMm: dialled(ask, "ctwdMm", at.ctwdMm, window.ctwdMm?.low, window.ctwdMm?.high),
      travelSpeedMmPerMin: dialled(ask, "travelSpeedMmPerMin", travel, slow, fastest),
      travelAngleDeg: angleOf(model, ask),
      gasFlowLPerMin: flowOf(model, ask),
    },
    passes: feed.passes,
    feedSetBy: feed.setBy,
    wantedAmps: wanted,
    travelForSize,
  };
}

/** Whether a size was asked for: a leg, or the groove as it is cut. */
const isAsking = ({ kind, leg }: Size): boolean => kind === "groove" || leg?.asked === true;

/**
 * The feed that draws what the plate wants, inside the bounds, and the passes that go with it. Travel that leaves a size
 * rises with the feed, so a size asked for that no hand keeps up with wants less feed. Where none is asked for the plate
 * comes first, and the size is what a usual pace leaves.
 */
function chooseFeed(model: Model, bounds: FeedBounds, size: Size, ask: PlanAsk, wanted: number) {
  const [low, high] = [bounds.bottom.feedMPerMin, bounds.top.feedMPerMin];
  const ampsAt = (feed: number) => model.at(feed)?.current.amps ?? NaN;
  const dial = (feed: number) => dialled(ask, "wireFeedMPerMin", feed, low, high);
  const demanded = dial(clamp(feedWhere(ampsAt, wanted, ...rowEnds(model)), low, high));
  const pace = size.travel(demanded, 1).value;
  const passes = Math.max(size.leastPasses, Math.ceil(handLimits(model.setup).slow / pace - 0.05));
  const share = isAsking(size) ? HAND_TRAVEL.high / size.travel(demanded, passes).value : 1;
  const reachable = demanded * Math.min(1, share);
  const setBy = (): FeedSetBy => {
    if (share < 1) return reachable < low ? bounds.bottom.code : "hand";
    if (ampsAt(high) < wanted - WITHIN_A) return bounds.top.code;
    if (ampsAt(low) > wanted + WITHIN_A) return bounds.bottom.code;
    return size.kind === "surface" ? "surface" : "plate";
  };
  return { mPerMin: dial(clamp(reachable, low, high)), passes, setBy: setBy() };
}

/** About 15 degrees, well inside what is given for the wire. */
function angleOf({ window }: Model, ask: PlanAsk): number | null {
  const band = window.travelAngleDeg;
  if (band === null) return null;
  const quarter = (band.high - band.low) / 4;
  return dialled(
    ask,
    "travelAngleDeg",
    clamp(15, band.low + quarter, band.high - quarter),
    band.low,
    band.high,
  );
}

function flowOf({ setup, window }: Model, ask: PlanAsk): number | null {
  if (setup.gas === "none") return null;
  const band = window.gasFlowLPerMin ?? usualWindow(setup).gasFlowLPerMin ?? null;
  if (band === null) return null;
  return dialled(ask, "gasFlowLPerMin", (band.low + band.high) / 2, band.low, band.high);
}
