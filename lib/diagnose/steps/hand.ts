import { areaFromLegMm2, travelForAreaMmPerS } from "@/lib/arc";
import { clamp } from "@/lib/numeric";
import { fieldInText } from "@/lib/setup";
import { fromMemory, isFillet, withoutDocument } from "@/lib/trade";
import type { ReadingContext } from "../reading";
import { onePassLegMm } from "../readings/hand";
import { currentEffect, legEffect } from "./effects";
import { number, type Step } from "./step";
import { BACK_IN, ONE_STEP, outside, STEP, stepShare, targetIn } from "./target";
import { strongest } from "../witness";

export function tipToWork(ctx: ReadingContext, sign: 1 | -1): Step {
  const band = ctx.window?.ctwdMm ?? null;
  const from = ctx.setup.ctwdMm;
  const to = targetIn(from, band, sign * STEP.ctwdMm);
  return {
    ...number(fieldInText("ctwdMm"), "small-length", from, to, {
      reason: outside(from, band) ? BACK_IN : ONE_STEP,
      source: band?.source ?? fromMemory,
    }),
    share: stepShare(from, to, STEP.ctwdMm),
    effects: to === null ? [] : currentEffect(ctx, ctx.setup.wireFeedMPerMin, to),
    stepSi: from !== null && to !== null ? to - from : sign * STEP.ctwdMm,
  };
}

/** To the travel that leaves the leg asked for, where mass balance can say it; else a fifth slower or faster. */
export function travel(ctx: ReadingContext, sign: 1 | -1): Step {
  const from = ctx.physics.travelMmPerMin;
  const { deposit, travelInferred } = ctx.physics;
  const target = ctx.setup.targetLegMm;
  const fillet = ctx.setup.joint !== null && isFillet(ctx.setup.joint);
  const forLeg =
    deposit !== null && target !== null && fillet
      ? travelForAreaMmPerS(deposit, areaFromLegMm2(target)) * 60
      : null;
  const useful = forLeg !== null && (from === null || sign * (forLeg - from) > 0.05 * from);
  const to = useful ? forLeg : from === null ? null : from * (1 + sign * STEP.travelShare);
  return {
    ...number(fieldInText("travelSpeedMmPerMin"), "travel-speed", from, to, {
      reason: useful
        ? "The travel that leaves the leg asked for, by mass balance of wire and bead."
        : "About a fifth, so that the difference shows; change nothing else.",
      source: useful ? withoutDocument("mass balance of wire and bead", "derived") : fromMemory,
    }),
    amounts:
      travelInferred && from !== null
        ? [
            {
              quantity: "travel now, from the bead's size",
              valueSi: from,
              unitKind: "travel-speed",
              relativeError: 0.15,
            },
          ]
        : [],
    effects: to === null ? [] : legEffect(ctx, null, to),
  };
}

export function dragAngle(ctx: ReadingContext): Step {
  const band = ctx.window?.travelAngleDeg ?? {
    low: 10,
    high: 20,
    source: strongest("trade-reference-notes"),
  };
  return number(
    fieldInText("travelAngleDeg"),
    "angle",
    ctx.setup.travelAngleDeg,
    clamp(15, band.low, band.high),
    {
      reason: "Inside the angles given for this process.",
      source: band.source,
    },
  );
}

export function pullInstead(ctx: ReadingContext): Step {
  return {
    ...dragAngle(ctx),
    fromSi: null,
    stepSi: null,
    fromText: ctx.setup.travelDirection,
    toText: "drag",
  };
}

export function workAngle({ setup }: ReadingContext): Step {
  const to = setup.joint === null ? null : isFillet(setup.joint) ? 45 : 90;
  return number(fieldInText("workAngleDeg"), "angle", setup.workAngleDeg, to, {
    reason: "It bisects the joint; lean a little towards the thicker or lower plate if need be.",
    source: strongest("apprenticeship-notes"),
  });
}

export function passSize({ setup, bead }: ReadingContext): Step {
  const { mm, source } = onePassLegMm(setup.electrodeDiameterMm, setup.process);
  return number(
    "leg of one pass",
    "small-length",
    bead.legMm,
    bead.legMm === null ? mm : Math.min(mm, bead.legMm),
    {
      reason: "About what one pass carries with this electrode.",
      source,
    },
  );
}
