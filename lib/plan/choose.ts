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
  "plate" | "surface" | "hand" | FeedBounds["top"]["code"] | FeedBounds["bottom"]["code"];

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
  const { slow, fast } = handLimits(setup);
  const [low, high] = [bounds.bottom.feedMPerMin, bounds.top.feedMPerMin];
  const asked = feedWhere((feed) => model.at(feed)?.current.amps ?? NaN, wanted, ...rowEnds(model));
  const demanded = clamp(asked, low, high);
  const passes = Math.max(size.leastPasses, Math.ceil(slow / size.travel(demanded, 1).value - 0.05));
  // Travel that leaves a size rises with the feed, so a size asked for that no hand keeps up with wants less feed. Where
  // none is asked for the plate comes first, and the size is what a usual pace leaves.
  const asking = size.kind === "groove" || size.leg?.asked === true;
  const reachable = asking ? demanded * (HAND_TRAVEL.high / size.travel(demanded, passes).value) : Infinity;
  const fastest = asking ? fast : HAND_TRAVEL.high;
  const feed = dialled(ask, "wireFeedMPerMin", clamp(Math.min(demanded, reachable), low, high), low, high);
  const at = model.at(feed)!;
  const volts = voltsAtFeed(windowQueryFor(setup)!, feed)!;
  const travelForSize = size.travel(feed, passes).value;
  return {
    setup: {
      ...setup,
      wireFeedMPerMin: feed,
      volts: dialled(ask, "volts", at.volts, volts.low, volts.high),
      ctwdMm: dialled(ask, "ctwdMm", at.ctwdMm, window.ctwdMm?.low, window.ctwdMm?.high),
      travelSpeedMmPerMin: dialled(
        ask,
        "travelSpeedMmPerMin",
        clamp(travelForSize, slow, fastest),
        slow,
        fastest,
      ),
      travelAngleDeg: angleOf(model, ask),
      gasFlowLPerMin: flowOf(model, ask),
    },
    passes,
    feedSetBy: setBy(),
    wantedAmps: wanted,
    travelForSize,
  };

  function setBy(): FeedSetBy {
    if (reachable < demanded) return reachable < low ? bounds.bottom.code : "hand";
    if (model.at(high)!.current.amps < wanted - WITHIN_A) return bounds.top.code;
    if (model.at(low)!.current.amps > wanted + WITHIN_A) return bounds.bottom.code;
    return size.kind === "surface" ? "surface" : "plate";
  }
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
