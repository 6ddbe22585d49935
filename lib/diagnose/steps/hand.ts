import { passesForLeg, type Ranged, travelForLeg } from "@/lib/arc";
import { clamp } from "@/lib/numeric";
import { bisectingAngleDeg, fieldInText, legOfPass, onePass, widestGapMm, wireOf } from "@/lib/setup";
import { fromMemory, isFillet, withoutDocument } from "@/lib/trade";
import type { ReadingContext } from "../reading";
import { strongest } from "../witness";
import type { Amount } from "../types";
import { currentEffect, legEffect } from "./effects";
import { number, type Step } from "./step";
import { ONE_STEP, reasonFor, STEP, stepShare, targetFor } from "./target";

/** Held anew by hand with every bead, so it goes back to the wire's own distance at once. */
export function tipToWork(ctx: ReadingContext, sign: 1 | -1): Step {
  const { setup, window } = ctx;
  const band = window?.ctwdMm ?? null;
  const from = setup.ctwdMm;
  const name = fieldInText("ctwdMm");
  const source = band?.source ?? fromMemory;
  if (from === null)
    return {
      ...number(name, "small-length", null, band === null ? null : (band.low + band.high) / 2, {
        reason: "Measured from contact tip to plate, power off.",
        source,
      }),
      stepSi: sign * STEP.ctwdMm,
    };
  const target = targetFor(from, from + sign * STEP.ctwdMm, band);
  return {
    ...number(name, "small-length", from, target.to, { reason: reasonFor(target, ONE_STEP), source }),
    share: stepShare(from, target.to, STEP.ctwdMm),
    effects: currentEffect(setup, setup.wireFeedMPerMin, target.to),
  };
}

/**
 * To the travel that leaves the leg asked for, where mass balance can say it, in as many passes as it takes; else a fifth
 * slower or faster. A speed the hand is to keep is no dial: it goes to the aim at once, at most to a half or to twice.
 */
export function travel(ctx: ReadingContext, sign: 1 | -1): Step {
  const { setup, physics } = ctx;
  const from = physics.travelMmPerMin;
  const wire = wireOf(setup);
  const wanted = legOfPass(setup);
  const feed = setup.wireFeedMPerMin;
  const model =
    wire === null || wanted === null || feed === null ? null : travelForLeg(wire, feed, wanted.legMm);
  const forLeg =
    model !== null && (from === null || sign * (model.value - from) > 0.05 * from)
      ? from === null
        ? model.value
        : clamp(model.value, from / 2, from * 2)
      : null;
  const to = forLeg ?? (from === null ? null : from * (1 + sign * STEP.travelShare));
  return {
    ...number(fieldInText("travelSpeedMmPerMin"), "travel-speed", from, to, {
      reason: travelReason(forLeg !== null, wanted?.passes ?? 1),
      source: forLeg !== null ? withoutDocument("mass balance of wire and bead", "derived") : fromMemory,
    }),
    amounts: [
      ...(physics.travelInferred === null ? [] : [travelNow(physics.travelInferred)]),
      ...(wanted !== null && wanted.passes > 1 ? passesAmounts(wanted) : []),
    ],
    effects: legEffect(setup, feed, to),
  };
}

function travelReason(forLeg: boolean, passes: number): string {
  if (forLeg && passes > 1) return "The leg asked for is more than one pass carries: lay it in several.";
  return forLeg
    ? "The travel that leaves the leg asked for, by mass balance of wire and bead."
    : "About a fifth, so that the difference shows; change nothing else.";
}

const travelNow = ({ value, relativeError }: Ranged): Amount => ({
  quantity: "travel now, from the bead's size",
  valueSi: value,
  unitKind: "travel-speed",
  relativeError,
});

const passesAmounts = ({ legMm, passes }: { legMm: number; passes: number }): readonly Amount[] => [
  { quantity: "passes", valueSi: passes, unitKind: "count", relativeError: null },
  {
    quantity: "leg of each if laid side by side, about",
    valueSi: legMm,
    unitKind: "small-length",
    relativeError: null,
  },
];

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
  const to = setup.joint === null ? null : bisectingAngleDeg(setup.joint);
  return number(fieldInText("workAngleDeg"), "angle", setup.workAngleDeg, to, {
    reason: "It bisects the joint; lean a little towards the thicker or lower plate if need be.",
    source: strongest("apprenticeship-notes"),
  });
}

/** Two passes or more, each no bigger than the wire carries in this position. */
export function passSize({ setup, bead }: ReadingContext): Step {
  const { mm, source } = onePass(setup);
  const wanted = setup.targetLegMm ?? bead.legMm;
  const passes = wanted === null ? null : passesForLeg(wanted, mm);
  return {
    ...number(
      "leg of one pass",
      "small-length",
      bead.legMm,
      bead.legMm === null ? mm : Math.min(mm, bead.legMm),
      {
        reason: "About what one pass carries with this electrode.",
        source,
      },
    ),
    amounts:
      passes === null || passes < 2
        ? []
        : [{ quantity: "passes for this leg", valueSi: passes, unitKind: "count", relativeError: null }],
  };
}

/** As the joint is run: a fillet closed, an open root at about half of what is still bridged, a backed one as drawn. */
export function fitUpGap({ setup }: ReadingContext): Step {
  const { joint, fitUpGapMm: from } = setup;
  const fillet = joint === null || isFillet(joint) || joint === "bead-on-plate" || joint === "stringer-pad";
  const to = fillet ? 1 : joint.endsWith("backed") ? 6.4 : widestGapMm(joint, setup.thicknessMm) * 0.6;
  return number(fieldInText("fitUpGapMm"), "small-length", from, to, {
    reason: fillet
      ? "Closed as far as the joint allows."
      : "As this root is usually opened; the procedure says how far.",
    source: fromMemory,
  });
}
