import { feedForAmps, extensionFromCtwdMm } from "@/lib/arc";
import {
  fieldInText,
  inputCap,
  isPositionOut,
  OUT_OF_POSITION_SHARE,
  plateAmps,
  transferOf,
  voltsWithFeed,
  windowQueryFor,
  wireOf,
  type RunSetup,
} from "@/lib/setup";
import { fromMemory, linesAtFeed, windowLines, type WindowQuery } from "@/lib/trade";
import type { Source } from "@/lib/base";
import type { ReadingContext } from "../reading";
import { currentEffect, legEffect, voltsEffect } from "./effects";
import { number, type Step } from "./step";
import { ONE_STEP, reasonFor, STEP, stepShare, targetFor, type Bounds } from "./target";

const FEED_SLACK_M_PER_MIN = 0.1;

/** Towards the line of the nearest row that lies the right way at this feed; else one volt, inside what the rows allow. */
export function volts(ctx: ReadingContext, sign: 1 | -1): Step {
  const { setup, window } = ctx;
  const from = setup.volts;
  const step = sign * STEP.volts;
  const source = window?.volts?.source ?? fromMemory;
  if (from === null) return { ...voltsUnknown(setup, source), stepSi: step };
  const suited = suitedVolts(setup, from, sign);
  const aim = suited !== null && sign * (suited - from) > STEP.volts / 2 ? suited : from + step;
  const target = targetFor(from, aim, window?.volts ?? null);
  return {
    ...number(fieldInText("volts"), "voltage", from, target.to, {
      reason: reasonFor(target, aim === suited ? "Towards the volts that go with this feed." : ONE_STEP),
      source,
    }),
    share: stepShare(from, target.to, step),
  };
}

/**
 * Volts that stand on a row's own line belong to that row: one step away from it first, and further towards the next row by
 * this much for each volt that they have left it already. So the aim moves little when the reading does. Own estimate.
 */
const LEAVING_A_LINE = 2;

/**
 * Where to at this feed: the nearest row's own volts that lie the way the change goes, or part of the way there from a row
 * that was just left behind; null where no row lies there.
 */
function suitedVolts(setup: RunSetup, from: number, sign: 1 | -1): number | null {
  const query = windowQueryFor(setup);
  const feed = setup.wireFeedMPerMin;
  if (query === null || feed === null) return null;
  const covering = linesAtFeed(query, feed, FEED_SLACK_M_PER_MIN).flatMap(({ volts: at }) => at ?? []);
  // Where no row reaches this feed, the end of the row that comes nearest.
  const lines = covering.length > 0 ? covering : voltsAtNearestEnd(query, feed);
  const ahead = lines.map((at) => sign * (at - from));
  const next = Math.min(...ahead.filter((volts) => volts > 0));
  const left = Math.min(...ahead.filter((volts) => volts <= 0).map((volts) => -volts));
  const far = Math.min(next, STEP.volts + LEAVING_A_LINE * left);
  return next === Infinity ? null : from + sign * far;
}

function voltsAtNearestEnd(query: WindowQuery, feed: number): readonly number[] {
  const ends = windowLines(query).flatMap(({ feedMPerMin: [low, high], volts: at }) =>
    at === null ? [] : [{ off: Math.max(low - feed, feed - high), volts: feed < low ? at[0] : at[1] }],
  );
  const least = Math.min(...ends.map(({ off }) => off));
  return ends.filter(({ off }) => off === least).map(({ volts: at }) => at);
}

/** Volts nobody read: what goes with the feed, where that is known, or no number at all. */
function voltsUnknown(setup: RunSetup, source: Source): Step {
  const to = setup.wireFeedMPerMin === null ? null : voltsWithFeed(setup, setup.wireFeedMPerMin);
  return number(fieldInText("volts"), "voltage", null, to, {
    reason:
      to === null
        ? "About a volt, or one tap of the switch; change nothing else."
        : "The volts that go with this feed; read the meter with the arc burning.",
    source,
  });
}

/** The current: wire feed on a wire machine, amps otherwise. */
export function current(ctx: ReadingContext, sign: 1 | -1): Step {
  const { process } = ctx.setup;
  return process === "SMAW" || process === "GTAW" ? amps(ctx, sign) : wireFeed(ctx, sign);
}

function amps({ setup, window }: ReadingContext, sign: 1 | -1): Step {
  const band = window?.amps ?? null;
  const from = setup.amps;
  const name = fieldInText("amps");
  if (from === null)
    return number(name, "current", null, null, {
      reason: "About a tenth; change nothing else.",
      source: band?.source ?? fromMemory,
    });
  const plate = setup.process === "GTAW" ? plateAmps(setup) : null;
  const aim = farther(from, from * (1 + sign * STEP.ampsShare), plate?.amps ?? null, sign);
  const target = targetFor(from, aim, band);
  return number(name, "current", from, target.to, {
    reason: reasonFor(target, ONE_STEP),
    share: stepShare(from, target.to, STEP.ampsShare * from),
    source: band?.source ?? plate?.source ?? fromMemory,
  });
}

/** Of two aims the farther one in the way of the change; one that lies the other way is none. */
const farther = (from: number, usual: number, model: number | null, sign: 1 | -1): number =>
  model !== null && sign * (model - from) > sign * (usual - from) ? model : usual;

/**
 * Wire feed towards what the model says this plate and position want, inside the rows of the wire and what the mains input
 * holds. Beside it stand the current and leg to expect, and the volts that go with the new feed.
 */
function wireFeed(ctx: ReadingContext, sign: 1 | -1): Step {
  const { setup } = ctx;
  const from = setup.wireFeedMPerMin;
  const name = fieldInText("wireFeedMPerMin");
  const source = ctx.window?.wireFeedMPerMin?.source ?? fromMemory;
  if (from === null)
    return number(name, "wire-feed", null, null, { reason: "About a tenth; change nothing else.", source });
  const cap = inputCap(setup);
  const bounds = capped(feedBounds(setup, from), cap?.maxWireFeedMPerMin ?? null, from);
  const aim = farther(from, from * (1 + sign * STEP.feedShare), feedAim(setup, from, sign), sign);
  const target = targetFor(from, aim, bounds);
  const atCap = cap !== null && sign > 0 && target.to >= cap.maxWireFeedMPerMin;
  return {
    ...number(name, "wire-feed", from, target.to, {
      reason: atCap
        ? "This input gives out there: more needs a stronger supply, or less plate per pass."
        : reasonFor(target, ONE_STEP),
      source: atCap ? cap.source : source,
    }),
    share: stepShare(from, target.to, STEP.feedShare * from),
    effects: [
      ...currentEffect(setup, target.to, setup.ctwdMm),
      ...legEffect(setup, target.to, ctx.physics.travelMmPerMin),
      ...voltsEffect(setup, target.to),
    ],
  };
}

/** The feed that brings what the plate wants; out of position and too hot, a third off what it was set to. */
function feedAim(setup: RunSetup, from: number, sign: 1 | -1): number | null {
  const wire = wireOf(setup);
  const plate = plateAmps(setup);
  if (sign < 0 && isPositionOut(setup)) return from * OUT_OF_POSITION_SHARE;
  if (wire === null || plate === null || setup.ctwdMm === null) return null;
  return feedForAmps(wire, plate.amps, extensionFromCtwdMm(setup.ctwdMm, transferOf(setup)));
}

/** The rows that cover this feed; where none does, all of them. */
function feedBounds(setup: RunSetup, feed: number): Bounds | null {
  const query = windowQueryFor(setup);
  if (query === null) return null;
  const lines = windowLines(query);
  const covering = lines.filter(({ feedMPerMin: [low, high] }) => feed >= low && feed <= high);
  const spans = (covering.length > 0 ? covering : lines).map(({ feedMPerMin }) => feedMPerMin);
  return spans.length === 0
    ? null
    : { low: Math.min(...spans.map(([low]) => low)), high: Math.max(...spans.map(([, high]) => high)) };
}

function capped(bounds: Bounds | null, cap: number | null, from: number): Bounds | null {
  if (cap === null || bounds === null || from > cap) return bounds;
  return { low: Math.min(bounds.low, cap), high: Math.min(bounds.high, cap) };
}
