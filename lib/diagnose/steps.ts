import type { Source } from "@/lib/base";
import {
  AREA_RELATIVE_ERROR,
  areaFromLegMm2,
  currentForFeed,
  depositAreaMm2,
  legFromAreaMm,
  travelForAreaMmPerS,
} from "@/lib/arc";
import { clamp } from "@/lib/numeric";
import { feedCap, isFillet } from "@/lib/trade";
import type { CauseId } from "./cause-ids";
import { cite, commonPractice, memorySource, ownEstimate } from "./cite";
import type { BandLike } from "./odds-from-band";
import type { ReadingContext } from "./reading";
import { onePassLegMm } from "./readings/hand";
import { voltsForFeed } from "./readings/window";
import type { Amount, Change, UnitKind } from "./types";

/** The number of a change. Everything else about it comes from the cause's row. */
export interface Step extends Pick<
  Change,
  "quantity" | "unitKind" | "fromSi" | "toSi" | "stepSi" | "fromText" | "toText" | "effects"
> {
  readonly reason: string;
  readonly amounts: readonly Amount[];
  readonly source: Source;
}

export const noNumber = (reason: string, source: Source): Step => ({
  quantity: null,
  unitKind: null,
  fromSi: null,
  toSi: null,
  stepSi: null,
  fromText: null,
  toText: null,
  effects: [],
  reason,
  amounts: [],
  source,
});

const number = (
  quantity: string,
  unitKind: UnitKind,
  fromSi: number | null,
  toSi: number | null,
  rest: Pick<Step, "reason" | "source"> & Partial<Step>,
): Step => ({
  ...noNumber(rest.reason, rest.source),
  quantity,
  unitKind,
  fromSi,
  toSi,
  stepSi: fromSi !== null && toSi !== null ? toSi - fromSi : null,
  ...rest,
});

/** One variable at a time, in steps small enough to see what they do: common steps, from memory. */
const STEP = { volts: 1, feedShare: 0.1, ctwdMm: 4, travelShare: 0.2, ampsShare: 0.1 };

const ONE_STEP = "One step the right way, inside the wire's starting window; change nothing else.";
const BACK_IN = "Back inside the wire's starting window.";

/**
 * From outside the window to its nearer quarter, from inside one step; never past the window. null when neither the
 * reading nor the window is known. An unknown reading goes to the middle of the window.
 */
export function targetIn(from: number | null, band: BandLike | null, step: number): number | null {
  if (from === null) return band === null ? null : (band.low + band.high) / 2;
  if (band === null) return from + step;
  const quarter = (band.high - band.low) / 4;
  if (step < 0 && from > band.high) return Math.min(band.high - quarter, from + step);
  if (step > 0 && from < band.low) return Math.max(band.low + quarter, from + step);
  return step < 0
    ? Math.max(from + step, Math.min(band.low, from))
    : Math.min(from + step, Math.max(band.high, from));
}

const outside = (from: number | null, band: BandLike | null) =>
  from !== null && band !== null && (from > band.high || from < band.low);

function stickOut(ctx: ReadingContext, sign: 1 | -1): Step {
  const band = ctx.window?.ctwdMm ?? null;
  const from = ctx.setup.ctwdMm;
  const to = targetIn(from, band, sign * STEP.ctwdMm);
  return {
    ...number("stick-out", "small-length", from, to, {
      reason: outside(from, band) ? BACK_IN : ONE_STEP,
      source: band?.source ?? memorySource,
    }),
    effects: to === null ? [] : currentEffect(ctx, ctx.setup.wireFeedMPerMin, to),
    stepSi: from !== null && to !== null ? to - from : sign * STEP.ctwdMm,
  };
}

/** Current after the change, by the burn-off relation. */
function currentEffect(
  ctx: ReadingContext,
  feedMPerMin: number | null,
  ctwdMm: number | null,
): readonly Amount[] {
  const { burnOff, extensionMm } = ctx.physics;
  if (burnOff === null || feedMPerMin === null || ctwdMm === null) return [];
  const arc = extensionMm === null || ctx.setup.ctwdMm === null ? 3.5 : ctx.setup.ctwdMm - extensionMm;
  const amps = currentForFeed(burnOff, (feedMPerMin * 1000) / 60, Math.max(0, ctwdMm - arc));
  return [
    {
      quantity: "current then, about",
      valueSi: amps,
      unitKind: "current",
      relativeError: burnOff.relativeError,
    },
  ];
}

function volts(ctx: ReadingContext, sign: 1 | -1): Step {
  const from = ctx.setup.volts;
  const band = ctx.window?.volts ?? null;
  const feed = ctx.setup.wireFeedMPerMin;
  const suited = feed === null ? null : voltsForFeed(ctx, feed);
  const step = sign * STEP.volts;
  const far = suited !== null && from !== null && sign * (suited - from) > STEP.volts;
  const to = far && band !== null ? clamp(suited, band.low, band.high) : targetIn(from, band, step);
  return {
    ...number("voltage", "voltage", from, to, {
      reason: far
        ? "To the volts that suit this feed by the wire's window."
        : outside(from, band)
          ? BACK_IN
          : ONE_STEP,
      source: band?.source ?? memorySource,
    }),
    stepSi: from !== null && to !== null ? to - from : step,
  };
}

/** The current: wire feed on a wire machine, amps otherwise. A small input caps the feed. */
function current(ctx: ReadingContext, sign: 1 | -1): Step {
  const { setup, window } = ctx;
  if (setup.process === "SMAW" || setup.process === "GTAW") {
    const band = window?.amps ?? null;
    const step = sign * STEP.ampsShare * (setup.amps ?? 0);
    const to = targetIn(setup.amps, band, step);
    return number("current", "current", setup.amps, to, {
      reason: outside(setup.amps, band) ? BACK_IN : ONE_STEP,
      source: band?.source ?? memorySource,
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
    ...number("wire feed", "wire-feed", from, to, {
      reason: capped
        ? "This input gives out there: more needs a stronger supply, or less plate per pass."
        : outside(from, band)
          ? BACK_IN
          : ONE_STEP,
      source: capped ? cap.source : (band?.source ?? memorySource),
    }),
    effects: to === null ? [] : [...currentEffect(ctx, to, setup.ctwdMm), ...legEffect(ctx, to, null)],
  };
}

/** Leg after the change, by mass balance. */
function legEffect(
  ctx: ReadingContext,
  feedMPerMin: number | null,
  travelMmPerMin: number | null,
): readonly Amount[] {
  const { deposit } = ctx.physics;
  const travel = travelMmPerMin ?? ctx.physics.travelMmPerMin;
  if (deposit === null || travel === null || ctx.setup.joint === null || !isFillet(ctx.setup.joint))
    return [];
  const feedMmPerS = feedMPerMin === null ? deposit.feedMmPerS : (feedMPerMin * 1000) / 60;
  const leg = legFromAreaMm(depositAreaMm2({ ...deposit, feedMmPerS }, travel / 60));
  return [
    {
      quantity: "leg then, about",
      valueSi: leg,
      unitKind: "small-length",
      relativeError: AREA_RELATIVE_ERROR / 2,
    },
  ];
}

/** To the travel that leaves the leg asked for, where mass balance can say it; else a fifth slower or faster. */
function travel(ctx: ReadingContext, sign: 1 | -1): Step {
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
    ...number("travel speed", "travel-speed", from, to, {
      reason: useful
        ? "The travel that leaves the leg asked for, by mass balance of wire and bead."
        : "About a fifth, so that the difference shows; change nothing else.",
      source: useful ? { document: "mass balance of wire and bead", confidence: "derived" } : memorySource,
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

function polarity({ setup, electrode }: ReadingContext): Step {
  const wanted = electrode?.polarity ?? [];
  return {
    ...noNumber("The class on the spool fixes the polarity.", electrode?.source ?? memorySource),
    quantity: "polarity",
    fromText: setup.polarity,
    toText: wanted.length > 0 ? wanted.join(" or ") : null,
  };
}

function gasKind({ setup, electrode }: ReadingContext): Step {
  const wanted = electrode?.gases ?? [];
  return {
    ...noNumber("The class on the spool fixes the gas.", electrode?.source ?? memorySource),
    quantity: "gas",
    fromText: setup.gas,
    toText: wanted.length > 0 ? wanted.join(" or ") : null,
  };
}

/** Usual flow where no window is known, L/min: 25 to 45 ft³/h for solid wire, 35 to 50 for cored, 15 to 25 for TIG. */
const usualFlow: Readonly<Record<string, readonly [number, number]>> = {
  GMAW: [12, 21],
  "FCAW-G": [16.5, 23.6],
  GTAW: [7, 12],
};

function gasFlow(ctx: ReadingContext, sign: 1 | -1): Step {
  const usual = usualFlow[ctx.setup.process ?? ""];
  const band =
    ctx.window?.gasFlowLPerMin ??
    (usual ? { low: usual[0], high: usual[1], source: cite(["C1"], false)[0]! } : null);
  const from = ctx.setup.gasFlowLPerMin;
  const to = band === null ? null : (band.low + band.high) / 2;
  const helps = from === null || to === null || sign * (to - from) > 0;
  return number("gas flow", "gas-flow", from, helps ? to : from, {
    reason: helps
      ? "The middle of the window; read it with the trigger held."
      : "The dial reads enough already: look for a leak, an empty cylinder or a blocked nozzle.",
    source: band?.source ?? memorySource,
  });
}

function dragAngle(ctx: ReadingContext): Step {
  const band = ctx.window?.travelAngleDeg ?? { low: 10, high: 20, source: cite(["C2"], false)[0]! };
  return number("travel angle", "angle", ctx.setup.travelAngleDeg, clamp(15, band.low, band.high), {
    reason: "Inside the angles given for this process.",
    source: band.source,
  });
}

function pullInstead(ctx: ReadingContext): Step {
  return {
    ...dragAngle(ctx),
    fromSi: null,
    stepSi: null,
    fromText: ctx.setup.travelDirection,
    toText: "drag",
  };
}

function workAngle({ setup }: ReadingContext): Step {
  const to = setup.joint === null ? null : isFillet(setup.joint) ? 45 : 90;
  return number("work angle", "angle", setup.workAngleDeg, to, {
    reason: "It bisects the joint; lean a little towards the thicker or lower plate if need be.",
    source: cite(["C1"], false)[0]!,
  });
}

function passSize({ setup, bead }: ReadingContext): Step {
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

function fixed(quantity: string, unitKind: UnitKind, toSi: number, reason: string, source: Source) {
  return (): Step => ({ ...noNumber(reason, source), quantity, unitKind, toSi });
}

/** Causes whose correction has a number, or a word to change to. */
export const steps: Partial<Readonly<Record<CauseId, (ctx: ReadingContext) => Step>>> = {
  "ctwd-long": (ctx) => stickOut(ctx, -1),
  "ctwd-short": (ctx) => stickOut(ctx, 1),
  "travel-fast": (ctx) => travel(ctx, -1),
  "travel-slow": (ctx) => travel(ctx, 1),
  "volt-high": (ctx) => volts(ctx, -1),
  "volt-low": (ctx) => volts(ctx, 1),
  "wfs-high": (ctx) => current(ctx, -1),
  "wfs-low": (ctx) => current(ctx, 1),
  polarity,
  "gas-wrong": gasKind,
  "gas-low": (ctx) => gasFlow(ctx, 1),
  "gas-high": (ctx) => gasFlow(ctx, -1),
  "drag-excess": dragAngle,
  "push-excess": dragAngle,
  "push-on-slag": pullInstead,
  "work-angle": workAngle,
  "pass-too-big": passSize,
  gap: ({ setup }) =>
    number("gap", "small-length", setup.fitUpGapMm, 1, {
      reason: "Closed as far as the joint allows.",
      source: memorySource,
    }),
  "arc-long": ({ setup }) =>
    number("arc length", "small-length", null, setup.electrodeDiameterMm, {
      reason: "About the core diameter.",
      source: cite(["C1"], false)[0]!,
    }),
  contam: fixed(
    "bright metal on each side",
    "small-length",
    25,
    "Dirt is drawn in from beside the joint as well.",
    ownEstimate,
  ),
  "crater-unfilled": fixed(
    "go back over the bead",
    "small-length",
    6,
    "Then wait until the crater is full.",
    cite(["B21"], false)[0]!,
  ),
  "moisture-plate": fixed(
    "plate at least",
    "temperature",
    95,
    "Water is gone there, with some reserve.",
    cite(["B10"], false)[0]!,
  ),
  "heat-interpass": ({ setup }) =>
    setup.baseMetal === "stainless"
      ? fixed(
          "start each pass below",
          "temperature",
          150,
          "The usual ceiling for stainless.",
          cite(["C2"], false)[0]!,
        )()
      : noNumber("Each pass should start as cool as the first.", memorySource),
  placement: ({ setup }) =>
    number("wire off the joint line, at most", "small-length", null, setup.electrodeDiameterMm, {
      reason:
        "Within one wire diameter of the root; a stringer is aimed at the toe of the last or one diameter off.",
      source: commonPractice,
    }),
  downhill: ({ setup }) => ({
    ...noNumber("Uphill the pool stays behind the arc.", cite(["A7"], false)[0]!),
    quantity: "progression",
    fromText: setup.progression,
    toText: "up",
  }),
};
