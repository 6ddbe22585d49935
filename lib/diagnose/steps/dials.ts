import { clamp } from "@/lib/numeric";
import { fieldInText } from "@/lib/setup";
import { feedCap, fromMemory } from "@/lib/trade";
import type { ReadingContext } from "../reading";
import { voltsForFeed } from "../readings/window";
import { currentEffect, legEffect } from "./effects";
import { number, type Step } from "./step";
import { BACK_IN, ONE_STEP, outside, STEP, stepShare, targetIn } from "./target";

export function volts(ctx: ReadingContext, sign: 1 | -1): Step {
  const from = ctx.setup.volts;
  const band = ctx.window?.volts ?? null;
  const feed = ctx.setup.wireFeedMPerMin;
  const suited = feed === null ? null : voltsForFeed(ctx, feed);
  const step = sign * STEP.volts;
  const far = suited !== null && from !== null && sign * (suited - from) > STEP.volts;
  const to = far && band !== null ? clamp(suited, band.low, band.high) : targetIn(from, band, step);
  return {
    ...number(fieldInText("volts"), "voltage", from, to, {
      reason: far
        ? "To the volts that suit this feed by the wire's window."
        : outside(from, band)
          ? BACK_IN
          : ONE_STEP,
      source: band?.source ?? fromMemory,
    }),
    share: stepShare(from, to, step),
    stepSi: from !== null && to !== null ? to - from : step,
  };
}

/** The current: wire feed on a wire machine, amps otherwise. A small input caps the feed. */
export function current(ctx: ReadingContext, sign: 1 | -1): Step {
  const { setup, window } = ctx;
  if (setup.process === "SMAW" || setup.process === "GTAW") {
    const band = window?.amps ?? null;
    const step = sign * STEP.ampsShare * (setup.amps ?? 0);
    const to = targetIn(setup.amps, band, step);
    return number(fieldInText("amps"), "current", setup.amps, to, {
      reason: outside(setup.amps, band) ? BACK_IN : ONE_STEP,
      share: stepShare(setup.amps, to, step),
      source: band?.source ?? fromMemory,
    });
  }
  const from = setup.wireFeedMPerMin;
  const band = window?.wireFeedMPerMin ?? null;
  const cap =
    setup.inputPower === null || setup.process === null || setup.electrodeDiameterMm === null
      ? null
      : feedCap(setup.inputPower, setup.process, setup.electrodeDiameterMm);
  const wanted = targetIn(from, band, sign * STEP.feedShare * (from ?? 0));
  const capped = cap !== null && wanted !== null && wanted > cap.maxWireFeedMPerMin;
  const to = capped ? cap.maxWireFeedMPerMin : wanted;
  return {
    ...number(fieldInText("wireFeedMPerMin"), "wire-feed", from, to, {
      reason: capped
        ? "This input gives out there: more needs a stronger supply, or less plate per pass."
        : outside(from, band)
          ? BACK_IN
          : ONE_STEP,
      source: capped ? cap.source : (band?.source ?? fromMemory),
    }),
    share: stepShare(from, to, STEP.feedShare * (from ?? 0)),
    effects: to === null ? [] : [...currentEffect(ctx, to, setup.ctwdMm), ...legEffect(ctx, to, null)],
  };
}
