import {
  beadQuantityRows,
  differenceQuantity,
  flatThroat,
  HAND_SIGMA_MM,
  sumQuantities,
  legOfThroat,
  statedQuantity,
  type JudgedQuantity,
  type Quantity,
} from "@/lib/measure";
import type { ImperfectionId } from "@/lib/trade";
import { missing, type CaseContext } from "./case-context";
import { spreadOf } from "./decide";
import type { BeadFigure } from "./rule";
import type { BeadReadings } from "./types";
import type { MissingReading } from "./verdict";

export interface FigureOfBead {
  readonly quantity: Quantity | null;
  /** The same figure by readings that say otherwise; the clause is decided only where all decide alike. */
  readonly otherwise: Quantity | null;
  /**
   * False: the figure rests on some of what it needs. It may be worse than this, so it can fail a limit and never meets
   * one; `missing` says what is lacking.
   */
  readonly whole: boolean;
  readonly used: readonly (keyof BeadReadings)[];
  readonly missing: readonly MissingReading[];
  /** A look for this settles what the readings leave open. */
  readonly lookFor: readonly ImperfectionId[];
}

/** A figure of the whole bead from its readings and what was specified; `missing` lists what it lacks. */
export function beadFigure(
  figure: BeadFigure,
  context: CaseContext,
  gapTakenOffOverMm: number | null = null,
): FigureOfBead {
  switch (figure) {
    case "throat-shortfall":
    case "throat-excess":
      return throatFigure(figure, context);
    case "leg-shortfall":
      return lessGap(shortfall(context), gapTakenOffOverMm, context);
    case "leg-least":
    case "leg-greatest":
    case "leg-difference":
      return legFigure(figure, context);
    default:
      return plainFigure(figure, context);
  }
}

const nothing = (...lacks: readonly MissingReading[]): FigureOfBead => ({
  quantity: null,
  otherwise: null,
  whole: false,
  used: [],
  missing: lacks,
  lookFor: [],
});

const asRead = (quantity: Quantity, ...used: readonly (keyof BeadReadings)[]): FigureOfBead => ({
  quantity,
  otherwise: null,
  whole: true,
  used,
  missing: [],
  lookFor: [],
});

/** A figure that is a reading and nothing else carries the reading's id. */
function plainFigure(figure: BeadFigure & JudgedQuantity, context: CaseContext): FigureOfBead {
  const { beadReadings, weld } = context.input;
  const reading = beadQuantityRows[figure].name;
  const read = beadReadings[reading];
  if (read !== null) return asRead(read, reading);
  if (figure === "width" && weld.faceWidthMm !== null)
    return asRead(statedQuantity(weld.faceWidthMm), reading);
  return figure === "convexity" ? derived("convexity", missing(figure), context) : nothing(missing(figure));
}

/** As the other gauges put it: a guess with a guard band, enough to fail a limit and never to meet one. */
function derived(reading: "throat" | "convexity", lack: MissingReading, context: CaseContext): FigureOfBead {
  const best = context.section?.best[reading] ?? null;
  if (best === null || context.section!.conflict.length > 0) return nothing(lack);
  return {
    quantity: {
      unit: "mm",
      value: best.value,
      expandedUncertainty: best.U,
      // Kept clear of the limit by its whole uncertainty, like a figure off a photo.
      source: "photo",
      budget: [],
    },
    otherwise: null,
    whole: false,
    used: (["leg1", "leg2", "throat", "convexity", "width"] as const).filter(
      (name) => context.input.beadReadings[name] !== null,
    ),
    missing: [lack],
    lookFor: [],
  };
}

function throatFigure(figure: "throat-shortfall" | "throat-excess", context: CaseContext): FigureOfBead {
  const asked = context.symbols.a;
  const { throat } = context.input.beadReadings;
  const found = throat !== null ? asRead(throat, "throat") : derived("throat", missing("throat"), context);
  if (asked === null) return nothing(...found.missing, missing("specified-throat"));
  if (found.quantity === null) return found;
  const wanted = statedQuantity(asked.value);
  const quantity =
    figure === "throat-shortfall"
      ? differenceQuantity(wanted, found.quantity)
      : differenceQuantity(found.quantity, wanted);
  return { ...found, quantity: { ...quantity, source: found.quantity.source } };
}

/** How far the size of a fillet stays under what was asked for. */
function shortfall(context: CaseContext): FigureOfBead {
  const asked = context.symbols.z;
  const size = filletSize(context);
  if (asked === null) return nothing(...size.missing, missing("specified-leg"));
  const under = (quantity: Quantity | null): Quantity | null =>
    quantity === null
      ? null
      : { ...differenceQuantity(statedQuantity(asked.value), quantity), source: quantity.source };
  return { ...size, quantity: under(size.quantity), otherwise: under(size.otherwise) };
}

/** A gap under the fillet that is wider than `overMm` adds to how far it stays under what was asked for. */
function lessGap(short: FigureOfBead, overMm: number | null, context: CaseContext): FigureOfBead {
  if (overMm === null || short.quantity === null) return short;
  const { input } = context;
  const { rootGap } = input.beadReadings;
  const isMarked = input.observations.some(({ imperfection }) => imperfection === "wide-root-gap");
  if (rootGap === null) {
    if (!isMarked && input.lookedFor.includes("wide-root-gap")) return short;
    const lookFor = isMarked ? [] : (["wide-root-gap"] as const);
    return {
      ...short,
      whole: false,
      missing: [...short.missing, missing("root-gap")],
      lookFor: [...short.lookFor, ...lookFor],
    };
  }
  const used = [...short.used, "rootGap" as const];
  const spread = spreadOf(rootGap, context.rule);
  if (rootGap.value + spread <= overMm) return { ...short, used };
  // Too near the edge to say whether it is taken off: the size may be less, and a finer feeler tells.
  if (rootGap.value - spread <= overMm)
    return { ...short, used, whole: false, missing: [...short.missing, missing("root-gap")] };
  const more = (one: Quantity | null): Quantity | null =>
    one === null ? null : { ...sumQuantities([one, rootGap]), source: one.source };
  return { ...short, used, quantity: more(short.quantity), otherwise: more(short.otherwise) };
}

/**
 * Size of a fillet: the shorter leg, or, where the face is hollow, the leg of the largest fillet that fits under it
 * (AWS A3.0, from memory). That the face is not hollow must be known: by convexity, by throat, or by a look for it.
 */
function filletSize(context: CaseContext): FigureOfBead {
  const { leg1, leg2, throat, convexity } = context.input.beadReadings;
  const lacks = [...(leg1 === null ? [missing("leg-1")] : []), ...(leg2 === null ? [missing("leg-2")] : [])];
  const legs = [leg1, leg2].filter((leg) => leg !== null);
  const shorter = legs.length === 0 ? null : legs.reduce((a, b) => (b.value < a.value ? b : a));
  const used = (["leg1", "leg2", "throat", "convexity"] as const).filter(
    (name) => context.input.beadReadings[name] !== null,
  );
  const underFace = throat === null ? null : legUnderFace(throat, context);
  const least = [shorter, underFace].filter((one) => one !== null);
  if (least.length === 0) return nothing(...lacks);
  const smallest = least.reduce((a, b) => (b.value < a.value ? b : a));
  const full = convexity !== null && convexity.value >= 0 && !isMarkedHollow(context);
  const base = { otherwise: null, used, lookFor: [] } as const;
  if (lacks.length > 0) return { ...base, quantity: smallest, whole: false, missing: lacks };
  // A full face is as large as its legs; a throat that says otherwise, by more than a hand's error, is held against them.
  if (full) {
    const otherwise = throat !== null && isThinner(throat, shorter!, context) ? underFace : null;
    return { ...base, quantity: shorter, otherwise, whole: true, missing: [] };
  }
  if (throat !== null) return { ...base, quantity: smallest, whole: true, missing: [] };
  if (convexity === null && wasLookedForHollow(context))
    return { ...base, quantity: shorter, whole: true, missing: [] };
  return hollowWithoutThroat(leg1!, leg2!, shorter!, context, used);
}

/** The throat is thinner than the legs make it, and not by a gauge held a little aslant. */
function isThinner(throat: Quantity, leg: Quantity, { input }: CaseContext): boolean {
  return legOfThroat(throat.value + 2 * HAND_SIGMA_MM, input.weld.plateAngleDeg) < leg.value;
}

/** Hollow, or nobody knows: at most as large as the legs and, with a convexity read, as the face lets it be. */
function hollowWithoutThroat(
  leg1: Quantity,
  leg2: Quantity,
  shorter: Quantity,
  context: CaseContext,
  used: FigureOfBead["used"],
): FigureOfBead {
  const { convexity } = context.input.beadReadings;
  const angle = context.input.weld.plateAngleDeg;
  const rest = { otherwise: null, whole: false, used, missing: [missing("throat")], lookFor: [] };
  if (convexity === null)
    return { ...rest, quantity: shorter, lookFor: isMarkedHollow(context) ? [] : ["concave-face"] };
  const throat = flatThroat(leg1.value, leg2.value, angle) + convexity.value;
  const value = Math.min(shorter.value, legOfThroat(Math.max(throat, 0), angle));
  const U = context.rule === "as-read" ? 0 : legOfThroat(context.section?.best.throat?.U ?? 0, angle);
  // As read: taken as they stand, like every gauge reading. Otherwise with all their uncertainty; and never more than
  // the shorter leg by itself lets it be.
  const byLeg = shorter.value + spreadOf(shorter, context.rule);
  return { ...rest, quantity: value + U < byLeg ? { ...shorter, value, expandedUncertainty: U } : shorter };
}

function legUnderFace(throat: Quantity, context: CaseContext): Quantity {
  const angle = context.input.weld.plateAngleDeg;
  return {
    ...throat,
    value: legOfThroat(throat.value, angle),
    expandedUncertainty: legOfThroat(throat.expandedUncertainty, angle),
    budget: throat.budget.map((part) => ({ ...part, u: legOfThroat(part.u, angle) })),
  };
}

function isMarkedHollow({ input }: CaseContext): boolean {
  return input.observations.some(({ imperfection }) => imperfection === "concave-face");
}

function wasLookedForHollow(context: CaseContext): boolean {
  // Sight is a reading taken as it stands, as for other figures.
  return (
    context.rule === "as-read" && context.input.lookedFor.includes("concave-face") && !isMarkedHollow(context)
  );
}

/**
 * What the least size is held against: the leg that was asked for, or the leg as laid where that is larger or nothing
 * was asked for. Laid shorter than asked for is a matter of the undersize rule, not of the least size.
 */
function askedOrLaid(askedMm: number | null, laid: Quantity): Quantity {
  return askedMm !== null && askedMm > laid.value ? statedQuantity(askedMm) : laid;
}

function legFigure(
  figure: "leg-least" | "leg-greatest" | "leg-difference",
  context: CaseContext,
): FigureOfBead {
  const { leg1, leg2 } = context.input.beadReadings;
  const lacks = [...(leg1 === null ? [missing("leg-1")] : []), ...(leg2 === null ? [missing("leg-2")] : [])];
  if (leg1 === null || leg2 === null) {
    const known = leg1 ?? leg2;
    // One long leg is too long whatever the other is.
    return figure === "leg-greatest" && known !== null
      ? { ...nothing(...lacks), quantity: known, used: leg1 === null ? ["leg2"] : ["leg1"] }
      : nothing(...lacks);
  }
  const [shorter, longer] = leg1.value <= leg2.value ? [leg1, leg2] : [leg2, leg1];
  const quantity =
    figure === "leg-least"
      ? askedOrLaid(context.symbols.z?.value ?? null, shorter)
      : figure === "leg-greatest"
        ? longer
        : differenceQuantity(longer, shorter);
  return asRead(quantity, "leg1", "leg2");
}
